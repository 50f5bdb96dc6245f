import { connectTables, type OpenTables } from "#store";
import { filesIn, type OfficePlace } from "./place.ts";
import type { AnyTables } from "./snapshot.ts";

/** The two sets of tables of an office; with PostgreSQL they are in one database. */
export interface ConnectedPlace {
  readonly store: OpenTables<AnyTables>;
  readonly office: OpenTables<AnyTables>;
  close(): Promise<void>;
}

/** Opens the tables of a place as they are. Throws what the database throws. @param files others than those of the folder. */
export function connectPlace(
  place: OfficePlace,
  files?: { readonly store: string; readonly office: string },
): ConnectedPlace {
  if ("database" in place) {
    const both = connectTables<AnyTables>({ address: place.database });
    return { store: both, office: both, close: () => both.db.destroy() };
  }
  const named = files ?? filesIn(place.dataFolder);
  const store = connectTables<AnyTables>({ file: named.store });
  const office = connectTables<AnyTables>({ file: named.office });
  return {
    store,
    office,
    close: async () => {
      await store.db.destroy();
      await office.db.destroy();
    },
  };
}
