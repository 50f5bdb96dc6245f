import pg from "pg";
import { type Issue, ok, type Result } from "#core";
import { attempt } from "../attempt.ts";

/** Short messages between the processes that use one PostgreSQL database. What is said while a connection is lost is not heard. */
export interface Notices {
  /** tells every process that listens, this one too; without a connection nothing is told */
  tell(text: string): void;
  close(): Promise<void>;
}

const RECONNECT_MS = 1000;

/**
 * Listens on a channel of the database, and goes on doing so when the connection was lost.
 *
 * @param channel lower-case letters and "_".
 * @param onTold called with every message; also with an empty one after a reconnection, because some may have been missed.
 *
 * Errors: store.unreachable, store.failed.
 */
export async function openNotices(
  address: string,
  channel: string,
  onTold: (text: string) => void,
): Promise<Result<Notices, Issue>> {
  const listening = new Listening(address, channel, onTold);
  const connected = await attempt(() => listening.connect());
  return connected.ok ? ok(listening) : connected;
}

class Listening implements Notices {
  readonly #address: string;
  readonly #channel: string;
  readonly #onTold: (text: string) => void;
  #client: pg.Client | undefined;
  #retry: NodeJS.Timeout | undefined;
  #isClosed = false;

  constructor(address: string, channel: string, onTold: (text: string) => void) {
    this.#address = address;
    this.#channel = channel;
    this.#onTold = onTold;
  }

  async connect(): Promise<void> {
    const client = new pg.Client({ connectionString: this.#address, keepAlive: true });
    client.on("notification", ({ payload }) => this.#onTold(payload ?? ""));
    client.on("error", () => this.#lost(client));
    client.on("end", () => this.#lost(client));
    await client.connect();
    await client.query(`listen ${this.#channel}`);
    if (this.#isClosed) await client.end();
    else this.#client = client;
  }

  tell(text: string): void {
    const client = this.#client;
    if (client !== undefined)
      void attempt(() => client.query("select pg_notify($1, $2)", [this.#channel, text]));
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    clearTimeout(this.#retry);
    const client = this.#client;
    this.#client = undefined;
    if (client !== undefined) await attempt(() => client.end());
  }

  #lost(client: pg.Client): void {
    if (this.#client !== client) return;
    this.#client = undefined;
    this.#tryAgain();
  }

  #tryAgain(): void {
    if (this.#isClosed) return;
    this.#retry = setTimeout(async () => {
      const connected = await attempt(() => this.connect());
      if (connected.ok) this.#onTold("");
      else this.#tryAgain();
    }, RECONNECT_MS);
    this.#retry.unref();
  }
}
