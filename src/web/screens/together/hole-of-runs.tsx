import { useState } from "react";
import { useJob } from "../../app/job-frame.tsx";
import { Button } from "../../components/button.tsx";
import { DepthPlot } from "../../components/depth-plot.tsx";
import { reviewWords } from "../../words/review/words.ts";
import { togetherWords } from "../../words/together/words.ts";
import { useWords } from "../../words/use-words.ts";
import { desk } from "../../worker/desk-client.ts";
import type { HoleRuns, RunCourse } from "../../worker/desk-review.ts";
import { ReasonDialog } from "../review/reason-dialog.tsx";
import shared from "../review/review.module.css";
import { useSaved } from "../review/use-saved.ts";
import { AgreementTable, CourseTable, DifferenceTable } from "./together-tables.tsx";

/** One hole with all its runs. */
export function HoleOfRuns({ hole: { courses, differences } }: { readonly hole: HoleRuns }) {
  const word = useWords(togetherWords);
  return (
    <>
      <CourseTable courses={courses} />
      {courses.length < 2 ? (
        <p>{word("oneRun")}</p>
      ) : (
        <>
          <Overlay courses={courses} />
          {differences.length === 0 ? null : (
            <>
              <AgreementTable differences={differences} />
              <p className={shared["soft"]}>{word("note")}</p>
            </>
          )}
          {differences.map((difference) => {
            const { first, second, levelM, alongM, acrossM } = difference;
            return (
              <section key={`${first} ${second}`} className={shared["column"]}>
                <h3>{word("differences", { first, second })}</h3>
                <CoursePlot
                  label={word("differencesLabel")}
                  lines={[{ id: second, levelM, alongM, acrossM }]}
                />
                <details>
                  <summary>{word("table")}</summary>
                  <DifferenceTable difference={difference} />
                </details>
              </section>
            );
          })}
          <Choose courses={courses} />
        </>
      )}
    </>
  );
}

interface Line extends Pick<RunCourse, "levelM" | "alongM" | "acrossM"> {
  readonly id: string;
}

function Overlay({ courses }: { readonly courses: readonly RunCourse[] }) {
  const word = useWords(togetherWords);
  return (
    <section className={shared["column"]}>
      <h3>{word("overlay")}</h3>
      <CoursePlot
        label={word("overlayLabel", { count: courses.length })}
        lines={courses.map(({ run, levelM, alongM, acrossM }) => ({ id: run, levelM, alongM, acrossM }))}
      />
    </section>
  );
}

function CoursePlot({ label, lines }: { readonly label: string; readonly lines: readonly Line[] }) {
  const word = useWords(togetherWords);
  const common = useWords(reviewWords);
  const panel = (id: "alongM" | "acrossM", title: string) => ({
    id,
    title,
    unit: "mm",
    series: lines.map((line) => ({
      id: line.id,
      name: line.id,
      points: line.levelM.map((depth, i) => ({ depth, value: 1000 * (line[id][i] ?? Number.NaN) })),
    })),
  });
  return (
    <DepthPlot
      label={label}
      panels={[panel("alongM", word("along")), panel("acrossM", word("across"))]}
      depthTitle={common("levelAxis")}
      depthUnit="m"
      isLevel
    />
  );
}

/** Which runs count: leaving one out is setting all its readings aside. */
function Choose({ courses }: { readonly courses: readonly RunCourse[] }) {
  const job = useJob();
  const word = useWords(togetherWords);
  const saved = useSaved();
  const [asked, setAsked] = useState<RunCourse>();
  const run = asked?.run ?? "";
  const leave = (isOut: boolean, reason: string) => desk().review.leaveOut(job.id, run, isOut, reason);
  const give = (reason: string) => {
    const isOut = asked?.isLeftOut === false;
    setAsked(undefined);
    void saved(
      leave(isOut, reason),
      word(isOut ? "leftOutDone" : "takenInDone", { run }),
      () => void leave(!isOut, word("undoReason")),
    );
  };
  return (
    <section className={shared["column"]}>
      <h3>{word("choose")}</h3>
      <p>{word("chooseText")}</p>
      <div className={shared["line"]}>
        {courses.map((course) => (
          <Button key={course.run} onPress={() => setAsked(course)}>
            {word(course.isLeftOut ? "takeIn" : "leaveOut", { run: course.run })}
          </Button>
        ))}
      </div>
      <ReasonDialog
        title={word(asked?.isLeftOut === true ? "takeInTitle" : "leaveOutTitle", { run })}
        isOpen={asked !== undefined}
        onClose={() => setAsked(undefined)}
        action={word(asked?.isLeftOut === true ? "takeIn" : "leaveOut", { run })}
        often={asked?.isLeftOut === true ? [] : [word("oftenDisturbed"), word("oftenRepeated")]}
        onGive={give}
      >
        <p>{word(asked?.isLeftOut === true ? "takeInText" : "leaveOutText")}</p>
      </ReasonDialog>
    </section>
  );
}
