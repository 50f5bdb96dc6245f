import type { ReactNode } from "react";
import { ShowCode } from "../screens/sign-in/show-code.tsx";
import { SignIn } from "../screens/sign-in/sign-in.tsx";
import { Loading } from "./outcomes.tsx";
import { useSession } from "./session.ts";

/** Lets the screens through once it is known who writes; asks for it where the office wants people to sign in. */
export function SessionGate({ children }: { readonly children: ReactNode }) {
  const session = useSession();
  if (session.state === "asking") return <Loading />;
  if (session.state === "signed-out") return <SignIn />;
  if (session.state === "second-factor") return <ShowCode />;
  return children;
}
