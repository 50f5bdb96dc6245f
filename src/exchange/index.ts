// The door of the layer: what other layers may use, listed one by one.

export { type AppendedStatements, appendStatements, type Pen } from "./append-statements.ts";
export { folderFromState, type GivenFolder, type ReadBlob } from "./folder-from-state.ts";
export {
  type FolderStatements,
  statementsFromJobFolder,
  type TakeOptions,
} from "./statements-from-job-folder.ts";
export { readingsBodies } from "./take/readings-statements.ts";
