/** Addresses of the screens of the review. */
const job = (id: string) => `/jobs/${encodeURIComponent(id)}`;

export const addressOf = {
  plan: job,
  inbox: (id: string) => `${job(id)}/inbox`,
  readings: (id: string, run: string) => `${job(id)}/runs/${encodeURIComponent(run)}`,
  element: (id: string, element: string) => `${job(id)}/elements/${encodeURIComponent(element)}`,
  path: (id: string, element: string) => `${job(id)}/elements/${encodeURIComponent(element)}/path`,
  together: (id: string, element: string) => `${job(id)}/elements/${encodeURIComponent(element)}/runs`,
  verdict: (id: string, element: string) => `${job(id)}/elements/${encodeURIComponent(element)}/verdict`,
} as const;
