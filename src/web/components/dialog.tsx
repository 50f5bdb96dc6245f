import type { ReactNode } from "react";
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { componentWords } from "../words/components/words.ts";
import { useWords } from "../words/use-words.ts";
import { Button } from "./button.tsx";
import styles from "./dialog.module.css";

export interface DialogProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** the main action; "Close" stands beside it always */
  readonly actions?: ReactNode;
  /** from the side, for navigation on narrow screens */
  readonly isDrawer?: boolean;
}

/** A question or a form before the page. Escape, "Close" and a press beside it close it; what was typed is the caller's to keep. */
export function Dialog({ title, isOpen, onClose, children, actions, isDrawer = false }: DialogProps) {
  const word = useWords(componentWords);
  return (
    <ModalOverlay
      className={styles["overlay"]!}
      isOpen={isOpen}
      isDismissable
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
      data-drawer={isDrawer || undefined}
    >
      <Modal className={styles["modal"]!}>
        <AriaDialog className={styles["dialog"]!}>
          <Heading slot="title" className={styles["title"]!}>
            {title}
          </Heading>
          {children}
          <div className={styles["actions"]}>
            {actions}
            <Button onPress={onClose}>{word("close")}</Button>
          </div>
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
