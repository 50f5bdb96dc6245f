import { createBrowserRouter, Navigate, type RouteObject } from "react-router";
import { screens } from "../screens/registry.ts";
import type { Screen } from "../screens/screen.ts";
import { Loading, Mistake, NotFound } from "./outcomes.tsx";

const routesOf = (place: Screen["place"]): RouteObject[] =>
  screens
    .filter((screen) => screen.place === place)
    .map(({ id, path, load }) => ({
      id,
      ...(path === "" ? { index: true } : { path }),
      lazy: load,
      HydrateFallback: Loading,
    }));

/** One route for every screen of the registry. The frame is a chunk of its own: screens beside the hole come without it. */
export const router = createBrowserRouter([
  {
    errorElement: <Mistake />,
    HydrateFallback: Loading,
    lazy: async () => ({ Component: (await import("./desk-frame.tsx")).DeskFrame }),
    children: [
      { index: true, element: <Navigate to="/jobs" replace /> },
      ...routesOf("app"),
      {
        path: "jobs/:job",
        HydrateFallback: Loading,
        lazy: async () => ({ Component: (await import("./job-frame.tsx")).JobFrame }),
        children: [...routesOf("job"), { path: "*", element: <NotFound /> }],
      },
      { path: "*", element: <NotFound /> },
    ],
  },
]);
