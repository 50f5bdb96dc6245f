import { useEffect, useState } from "react";
import { Outlet, useLocation, useMatch } from "react-router";
import { Button } from "../components/button.tsx";
import { Dialog } from "../components/dialog.tsx";
import { Notice } from "../components/message.tsx";
import { ToastPlace } from "../components/toast.tsx";
import { frameWords } from "../words/frame/words.ts";
import { useWords } from "../words/use-words.ts";
import { useDeviceStatus } from "../worker/use-device-status.ts";
import styles from "./desk-frame.module.css";
import { DropAnywhere } from "./drop-anywhere.tsx";
import { Navigation } from "./navigation.tsx";
import { SessionGate } from "./session-gate.tsx";
import { TopBar } from "./top-bar.tsx";
import { TroubleSentence } from "./trouble-sentence.tsx";

/** What stands around every screen at the desk: top bar, screens of the job at the side (in a drawer where it is narrow). */
export function DeskFrame() {
  const word = useWords(frameWords);
  const [isMenuOpen, setMenuOpen] = useState(false);
  const { pathname } = useLocation();
  const job = useMatch("/jobs/:job/*")?.params.job;
  // a choice in the drawer closes it
  // biome-ignore lint/correctness/useExhaustiveDependencies: the address is what it waits for
  useEffect(() => setMenuOpen(false), [pathname]);
  return (
    <SessionGate>
      <a className={styles["skip"]} href="#main">
        {word("skip")}
      </a>
      <TopBar job={job}>
        <span className={styles["menu"]}>
          <Button weight="quiet" onPress={() => setMenuOpen(true)}>
            <span aria-hidden="true">☰</span> {word("menu")}
          </Button>
        </span>
      </TopBar>
      <div className={styles["body"]}>
        {job === undefined ? null : (
          <div className={styles["side"]}>
            <Navigation job={job} />
          </div>
        )}
        <div className={styles["content"]}>
          <DeviceNotice />
          <Outlet />
        </div>
      </div>
      <Dialog title={word("navigation")} isOpen={isMenuOpen} onClose={() => setMenuOpen(false)} isDrawer>
        <Navigation job={job} isInDrawer />
      </Dialog>
      <DropAnywhere job={job} />
      <ToastPlace />
    </SessionGate>
  );
}

/** Said above every screen while this window may not write, or nothing can be kept. */
function DeviceNotice() {
  const word = useWords(frameWords);
  const status = useDeviceStatus();
  if (status === undefined) return null;
  if (status.trouble !== undefined)
    return (
      <div className={styles["notice"]}>
        <Notice>
          <strong>{word("storeTrouble")}.</strong> <TroubleSentence trouble={status.trouble} />
        </Notice>
      </div>
    );
  if (status.writer === "here") return null;
  return (
    <div className={styles["notice"]}>
      <Notice>{word("writerElsewhere")}</Notice>
    </div>
  );
}
