import { useEffect } from "react";
import { useNavigate } from "react-router";
import { offerFiles } from "./dropped-files.ts";

const holdsFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes("Files") ?? false;

/**
 * Takes files that are dropped anywhere on the page, where no place for files takes them itself, to the screen that brings files
 * in. Without it the browser would leave the page and show the file.
 *
 * @param job whose screens are open; undefined: the list of jobs, which has its own place for job folders.
 */
export function DropAnywhere({ job }: { readonly job: string | undefined }) {
  const go = useNavigate();
  useEffect(() => {
    const over = (event: DragEvent) => {
      if (holdsFiles(event)) event.preventDefault();
    };
    const drop = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      const files = [...(event.dataTransfer?.files ?? [])];
      if (job === undefined || files.length === 0) return;
      offerFiles(files);
      void go(`/jobs/${encodeURIComponent(job)}/bring-in`);
    };
    window.addEventListener("dragover", over);
    window.addEventListener("drop", drop);
    return () => {
      window.removeEventListener("dragover", over);
      window.removeEventListener("drop", drop);
    };
  }, [job, go]);
  return null;
}
