import { storeSuite } from "../../../test/acceptance/store-suite.ts";
import { openMemoryStore } from "./memory-store.ts";

storeSuite("the store in memory", { create: async () => openMemoryStore() });
