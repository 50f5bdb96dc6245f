// The worker starts here; everything else is in desk-in-worker.ts.
import { expose } from "comlink";
import { DeskInWorker } from "./desk-in-worker.ts";

expose(new DeskInWorker());
