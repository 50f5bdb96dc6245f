import { Resvg } from "@resvg/resvg-js";
import { Document, ImageRun, Packer, Paragraph, TextRun } from "docx";
import { reduceJob } from "#core";
import { folderFromFiles, readJobFolder } from "#formats";
import { type ReportModel, renderPdf, renderWord, reportModel, wordTemplate } from "#report";
import { namedScenarios, writeJobFolder } from "#simulator";

// Word and PDF by the number of elements, each with plan and section, against the naive way to the same drawings: the library docx,
// a heading, two pictures by plain resvg and a line for each level. Only growth and ratio count.

const SIZES = process.argv.length > 2 ? process.argv.slice(2).map(Number) : [50, 100, 200];
const STATIONS = 20;
const SEED = 1;
const large = namedScenarios.find(({ id }) => id === "large")!;

async function modelOf(elements: number): Promise<ReportModel> {
  const scenario = large.make({ elements, stations: STATIONS, interval_m: 1 }, SEED);
  const { files } = writeJobFolder(scenario, SEED);
  const { job } = await readJobFolder(folderFromFiles(new Map(files)));
  return reportModel(job!, reduceJob(job!), [], {
    language: "en",
    units: "si",
    version: "bench",
    report: { number: "1", revision: "A", status: "draft", date: "2026-03-20" },
  });
}

/** The naive way: every drawing through resvg with its usual settings, every line a paragraph. */
async function naive(model: ReportModel): Promise<number> {
  const children = model.elements.flatMap((element) => [
    new Paragraph({ children: [new TextRun(`${element.id} ${element.word}`)] }),
    ...element.figures.map((key) => {
      const svg = model.figures.find((figure) => figure.key === key)!.svg;
      const png = new Resvg(svg, { fitTo: { mode: "width", value: 1200 } }).render().asPng();
      const transformation = { width: 600, height: 560 };
      return new Paragraph({ children: [new ImageRun({ type: "png", data: png, transformation })] });
    }),
    ...element.stations.map(
      ({ cells }) => new Paragraph({ children: [new TextRun(cells.map(({ text }) => text).join("\t"))] }),
    ),
  ]);
  const document = new Document({ sections: [{ children }] });
  return (await Packer.toBuffer(document)).length;
}

/** Seconds of CPU: a machine that does something else besides makes the clock worthless. */
async function timed(work: () => Promise<unknown>): Promise<number> {
  const from = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1e6;
}

const shown = (seconds: number) => `${seconds.toFixed(1)} s`;
console.log("elements   Word      PDF       naive Word   Word / naive   most memory");
for (const size of SIZES) {
  const model = await modelOf(size);
  const word = await timed(() => renderWord(model, wordTemplate()));
  const pdf = await timed(() => renderPdf(model));
  const plain = await timed(() => naive(model));
  const memory = `${Math.round(process.resourceUsage().maxRSS / 1000)} MB`;
  console.log(
    [
      String(size).padEnd(11),
      shown(word).padEnd(10),
      shown(pdf).padEnd(10),
      shown(plain).padEnd(13),
      (word / plain).toFixed(2).padEnd(15),
      memory,
    ].join(""),
  );
}
