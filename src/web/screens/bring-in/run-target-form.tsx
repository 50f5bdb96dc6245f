import { useState } from "react";
import type { Calibration, Issue } from "#core";
import { momentOf } from "#formats";
import { useJob } from "../../app/job-frame.tsx";
import { Button } from "../../components/button.tsx";
import { ChoiceField } from "../../components/choice-field.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { ErrorState } from "../../components/message.tsx";
import { NumberField } from "../../components/number-field.tsx";
import { TextField } from "../../components/text-field.tsx";
import { Tick } from "../../components/tick.tsx";
import { readTypedNumber } from "../../components/typed-number.ts";
import { bringInWords } from "../../words/bring-in/words.ts";
import { useWords, type Words } from "../../words/use-words.ts";
import { desk } from "../../worker/desk-client.ts";
import type { MappingView, RunTarget } from "../../worker/desk-logger.ts";
import { useAnswer } from "../../worker/use-answer.ts";
import styles from "./bring-in.module.css";
import { saveFile } from "./save-file.ts";

type Key = keyof (typeof bringInWords)["en"];
type North = "magnetic" | "true" | "grid";
const NORTHS: readonly North[] = ["magnetic", "true", "grid"];
const OWN_BORE = "";

/** As it was typed and chosen. */
interface Form {
  readonly run: string | undefined;
  readonly element: string | undefined;
  readonly tube: string;
  readonly instrument: string | undefined;
  readonly calibrations: readonly string[] | undefined;
  readonly operator: string;
  readonly startedAt: string;
  readonly opening: string;
  readonly closing: string;
  readonly north: North;
  readonly groove: string;
  readonly mapping: string | undefined;
}

const EMPTY: Form = {
  run: undefined,
  element: undefined,
  tube: OWN_BORE,
  instrument: undefined,
  calibrations: undefined,
  operator: "",
  startedAt: "",
  opening: "",
  closing: "",
  north: "grid",
  groove: "",
  mapping: undefined,
};

/** To which run, element and instrument the readings belong; accepting writes them. */
export function RunTargetForm({
  view,
  isLookedAt,
  onDone,
}: {
  readonly view: MappingView;
  readonly isLookedAt: boolean;
  readonly onDone: (said: string, element: string) => void;
}) {
  const job = useJob();
  const word = useWords(bringInWords);
  const [form, setForm] = useState(EMPTY);
  const [troubles, setTroubles] = useState<readonly Key[]>([]);
  const [refused, setRefused] = useState<readonly Issue[]>();
  const [isBusy, setBusy] = useState(false);
  const settings = useAnswer((asked) => asked.settings(job.id), [job.id, job.revision]);
  const runs = useAnswer((asked) => asked.runs(job.id), [job.id, job.revision]) ?? [];
  const element = form.element ?? job.elements[0]?.id ?? "";
  const detail = useAnswer((asked) => asked.element(job.id, element), [job.id, element, job.revision]);
  if (job.elements.length === 0) return <p>{word("noElements")}</p>;
  const instruments = settings?.instruments ?? [];
  const instrument = form.instrument ?? instruments[0]?.id ?? "";
  const ofInstrument = (settings?.calibrations ?? []).filter((each) => each.instrumentId === instrument);
  const calibrations = form.calibrations ?? latestOfEachKind(ofInstrument);
  const taken = new Set(runs.map(({ id }) => id));
  const run = form.run ?? freeName(element, taken);
  const mapping = form.mapping ?? view.template ?? view.file.replace(/\.\w+$/, "");
  const isGyro = view.measures === "tilt-turn" || view.measures === "acceleration-turn";
  const set = (more: Partial<Form>) => setForm({ ...form, ...more });
  const shows = (key: Key, places = {}) => (troubles.includes(key) ? word(key, places) : undefined);

  const accept = async () => {
    const found = troublesOf({ ...form, run, instrument, mapping }, view, isLookedAt, taken);
    setTroubles(found);
    if (found.length > 0) return;
    setBusy(true);
    const target = targetOf({ ...form, run, element, instrument, calibrations }, view);
    const done = await desk().logger.accept(job.id, target, { name: mapping, reason: word("mappedReason") });
    setBusy(false);
    if (done.ok) onDone(word("saved", { run, count: view.taken }), element);
    else setRefused(done.error);
  };
  const exportMapping = async () => {
    const text = await desk().logger.exportMapping(mapping);
    if (text !== undefined) saveFile(`${mapping}.mapping.json`, text);
  };

  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void accept();
      }}
    >
      <div className={styles["form"]}>
        <ChoiceField
          label={word("element")}
          value={element}
          choices={job.elements.map(({ id }) => ({ id, text: id }))}
          onChange={(id) => set({ element: id, tube: OWN_BORE })}
        />
        {(detail?.tubes.length ?? 0) === 0 ? null : (
          <ChoiceField
            label={word("tube")}
            value={form.tube}
            choices={[
              { id: OWN_BORE, text: word("noTube") },
              ...detail!.tubes.map(({ id }) => ({ id, text: id })),
            ]}
            onChange={(tube) => set({ tube })}
          />
        )}
        <TextField
          label={word("run")}
          value={run}
          onChange={(text) => set({ run: text })}
          trouble={shows("runMissing") ?? shows("runTaken", { run })}
        />
        {instruments.length === 0 ? (
          <TextField
            label={word("instrument")}
            hint={word("instrumentHint")}
            value={instrument}
            onChange={(text) => set({ instrument: text })}
            trouble={shows("instrumentMissing")}
          />
        ) : (
          <ChoiceField
            label={word("instrument")}
            value={instrument}
            choices={instruments.map(({ id }) => ({ id, text: id }))}
            onChange={(id) => set({ instrument: id, calibrations: undefined })}
          />
        )}
        <TextField
          label={word("operator")}
          value={form.operator}
          onChange={(operator) => set({ operator })}
        />
        {view.isDated ? null : (
          <TextField
            label={word("startedAt")}
            hint={word("startedAtHint")}
            value={form.startedAt}
            onChange={(startedAt) => set({ startedAt })}
            trouble={shows("startedAtBad")}
          />
        )}
        {isGyro ? (
          <>
            <NumberField
              label={word("opening")}
              unit="°"
              text={form.opening}
              onChange={(opening) => set({ opening })}
              min={-360}
              max={360}
            />
            <NumberField
              label={word("closing")}
              unit="°"
              text={form.closing}
              onChange={(closing) => set({ closing })}
              min={-360}
              max={360}
            />
            <ChoiceField
              label={word("headingNorth")}
              value={form.north}
              choices={NORTHS.map((id) => ({ id, text: word(`north_${id}`) }))}
              onChange={(north) => set({ north })}
            />
          </>
        ) : null}
        {view.measures === "keyed-tilt" ? (
          <NumberField
            label={word("groove")}
            unit="°"
            text={form.groove}
            onChange={(groove) => set({ groove })}
            min={-360}
            max={360}
          />
        ) : null}
        <TextField
          label={word("mappingName")}
          hint={word("mappingHint", { fingerprint: view.fingerprint })}
          value={mapping}
          onChange={(text) => set({ mapping: text })}
          trouble={shows("mappingMissing")}
        />
        {ofInstrument.length === 0 ? null : (
          <fieldset className={styles["ticks"]}>
            <legend>{word("calibrations")}</legend>
            {ofInstrument.map(({ id }) => (
              <Tick
                key={id}
                text={id}
                isTicked={calibrations.includes(id)}
                onChange={(isTicked) =>
                  set({
                    calibrations: isTicked
                      ? [...calibrations, id]
                      : calibrations.filter((each) => each !== id),
                  })
                }
              />
            ))}
          </fieldset>
        )}
      </div>
      <Troubles troubles={troubles} word={word} />
      {refused === undefined ? null : (
        <ErrorState title={word("acceptFailed")}>
          <FindingList findings={refused} />
        </ErrorState>
      )}
      <div className={styles["actions"]}>
        <Button weight="main" type="submit" isPending={isBusy}>
          {word("accept")}
        </Button>
        <Button onPress={() => void exportMapping()}>{word("exportMapping")}</Button>
      </div>
    </form>
  );
}

/** Said beside the button: what belongs to no field of the form. */
function Troubles({ troubles, word }: { readonly troubles: readonly Key[]; readonly word: Words<Key> }) {
  const shown = troubles.filter((key) => ELSEWHERE.has(key));
  return shown.length === 0 ? null : (
    <ul role="alert" className={styles["troubles"]}>
      {shown.map((key) => (
        <li key={key}>{word(key)}</li>
      ))}
    </ul>
  );
}

const ELSEWHERE: ReadonlySet<Key> = new Set<Key>([
  "noMeasures",
  "notConfirmed",
  "headingMissing",
  "grooveMissing",
]);

function troublesOf(
  form: Form,
  view: MappingView,
  isLookedAt: boolean,
  taken: ReadonlySet<string>,
): readonly Key[] {
  const found: Key[] = [];
  const { run = "", instrument = "", mapping = "" } = form;
  if (view.measures === undefined) found.push("noMeasures");
  if (!isLookedAt) found.push("notConfirmed");
  if (run.trim() === "") found.push("runMissing");
  if (taken.has(run.trim())) found.push("runTaken");
  if (instrument.trim() === "") found.push("instrumentMissing");
  if (mapping.trim() === "") found.push("mappingMissing");
  if (form.startedAt.trim() !== "" && momentOf(form.startedAt) === undefined) found.push("startedAtBad");
  const isGyro = view.measures === "tilt-turn" || view.measures === "acceleration-turn";
  if (isGyro && degreesIn(form.opening) === undefined) found.push("headingMissing");
  if (view.measures === "keyed-tilt" && degreesIn(form.groove) === undefined) found.push("grooveMissing");
  return found;
}

function targetOf(
  form: Form & { readonly run: string; readonly element: string; readonly instrument: string },
  view: MappingView,
): RunTarget {
  const heading = (text: string) => {
    const headingDeg = degreesIn(text);
    return headingDeg === undefined ? undefined : { headingDeg, north: form.north };
  };
  const began = form.startedAt.trim() === "" ? undefined : momentOf(form.startedAt);
  return {
    run: form.run.trim(),
    element: form.element,
    tube: form.tube === OWN_BORE ? undefined : form.tube,
    instrument: form.instrument.trim(),
    calibrations: form.calibrations ?? [],
    operator: form.operator.trim() === "" ? undefined : form.operator.trim(),
    startedAt: began === undefined ? undefined : new Date(began.ms).toISOString(),
    opening: heading(form.opening),
    closing: heading(form.closing),
    grooveBearingDeg: view.measures === "keyed-tilt" ? degreesIn(form.groove) : undefined,
  };
}

function degreesIn(text: string): number | undefined {
  const read = readTypedNumber(text, "°");
  return read.kind === "number" && Math.abs(read.value) <= 360 ? read.value : undefined;
}

/** Of each kind the one made last: the usual choice, to be changed by hand. */
function latestOfEachKind(calibrations: readonly Calibration[]): readonly string[] {
  const latest = new Map<string, Calibration>();
  for (const each of calibrations) {
    const known = latest.get(each.kind);
    if (known === undefined || Date.parse(each.madeAt) >= Date.parse(known.madeAt))
      latest.set(each.kind, each);
  }
  return [...latest.values()].map(({ id }) => id);
}

function freeName(element: string, taken: ReadonlySet<string>): string {
  let number = 1;
  while (taken.has(`${element}-${number}`)) number += 1;
  return `${element}-${number}`;
}
