import { StrictMode } from "react";
import { RouterProvider } from "react-router";
import { router } from "./router.tsx";

/** The whole app. */
export function App() {
  return (
    <StrictMode>
      <RouterProvider router={router} />
    </StrictMode>
  );
}
