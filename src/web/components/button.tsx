import type { ReactNode } from "react";
import { Button as AriaButton } from "react-aria-components";
import { Link } from "react-router";
import styles from "./button.module.css";

/** main: the one next thing of a page. plain: everything else. quiet: inside tables and bars. */
export type ButtonWeight = "main" | "plain" | "quiet";

export interface ButtonProps {
  readonly weight?: ButtonWeight;
  readonly onPress?: () => void;
  readonly children: ReactNode;
  /** what it does, where the text alone does not say it */
  readonly label?: string;
  readonly type?: "button" | "submit";
  /** at work: a second press does nothing */
  readonly isPending?: boolean;
  readonly isPressed?: boolean;
  readonly autoFocus?: boolean;
  readonly slot?: string;
}

/** Something to press. There is no greyed-out state: a button that cannot go on says what is missing. */
export function Button({ weight = "plain", label, isPressed, children, ...rest }: ButtonProps) {
  return (
    <AriaButton
      {...rest}
      className={styles["button"]!}
      data-weight={weight}
      {...(label === undefined ? {} : { "aria-label": label })}
      {...(isPressed === undefined ? {} : { "aria-pressed": isPressed })}
    >
      {children}
    </AriaButton>
  );
}

/** A way to another screen that looks like a button. */
export function LinkButton({
  to,
  weight = "plain",
  children,
}: {
  readonly to: string;
  readonly weight?: ButtonWeight;
  readonly children: ReactNode;
}) {
  return (
    <Link to={to} className={styles["button"]!} data-weight={weight}>
      {children}
    </Link>
  );
}
