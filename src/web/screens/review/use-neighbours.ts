import { useJob } from "../../app/job-frame.tsx";

/** Addresses of the same screen for the element before and the one after. */
export function useNeighbours(
  element: string,
  address: (job: string, element: string) => string,
): { readonly previous: string | undefined; readonly next: string | undefined } {
  const job = useJob();
  const place = job.elements.findIndex(({ id }) => id === element);
  const to = (at: number) => {
    const other = place < 0 ? undefined : job.elements[at];
    return other === undefined ? undefined : address(job.id, other.id);
  };
  return { previous: to(place - 1), next: to(place + 1) };
}
