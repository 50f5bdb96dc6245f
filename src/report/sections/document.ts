import type { Block } from "../model/report-model.ts";
import { frame } from "../words/frame-words.ts";
import { say } from "../words/say.ts";
import { sectionWords } from "../words/section-words.ts";
import { type ReportSection, table } from "./section.ts";

/** Which paper this is, who stands behind it, and what changed since the one before. */
export const documentSection: ReportSection = {
  id: "document",
  title: sectionWords.control,
  blocks: (context, base) => {
    const { language, options } = context;
    const { head } = options.report;
    const log =
      head === undefined
        ? say(frame.noLog, language)
        : say(frame.logHead, language, { size: head.size, root: head.root });
    const rows = [
      { name: say(frame.reportNumber, language), value: base.identity.number },
      { name: say(frame.revisionName, language), value: base.identity.revision },
      { name: say(frame.status, language), value: base.statusText },
      { name: say(frame.date, language), value: base.dateText },
      ...base.cover,
      ...(base.fingerprint === ""
        ? []
        : [{ name: say(frame.fingerprintLong, language), value: base.fingerprint }]),
    ];
    const changes: readonly Block[] =
      options.previous === undefined
        ? []
        : [
            { kind: "heading", level: 2, text: say(sectionWords.changes, language) },
            ...(base.changes.length === 0
              ? [{ kind: "paragraph", text: say(sectionWords.noChanges, language) } as const]
              : table(
                  context,
                  "changes",
                  sectionWords.changes,
                  [
                    { head: "what", cell: ({ what }) => what, share: 1.2 },
                    { head: "was", cell: ({ was }) => was, share: 1.4 },
                    { head: "is", cell: ({ is }) => is, share: 1.4 },
                  ],
                  base.changes,
                )),
          ];
    return [{ kind: "facts", rows }, { kind: "paragraph", text: log }, ...changes];
  },
};
