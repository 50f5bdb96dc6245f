/** How a server runs. Read once at the start, from the command line and the environment. */
export interface ServerSettings {
  /** local: one user without login, only on this machine. shared: accounts, any number of people and servers */
  readonly mode: "local" | "shared";
  readonly host: string;
  /** 0: any free port */
  readonly port: number;
  /** folder of the SQLite files, blobs and keys */
  readonly dataFolder: string;
  /** postgres://…; undefined: SQLite in the data folder */
  readonly database: string | undefined;
  /** address as people type it, behind a reverse proxy: origin for cookies, links and passkeys */
  readonly publicAddress: string | undefined;
  /** addresses of proxies whose forwarded headers are believed */
  readonly trustedProxies: readonly string[];
  /** folder with the built app; undefined: no app, only the interface */
  readonly appFolder: string | undefined;
  /** how many threads or jobs at once this process gives to heavy work; 0: none, others do it */
  readonly workers: number;
  /** secret of the program that reads the metrics in shared mode; without one nobody may */
  readonly metricsToken?: string;
  readonly logLevel: "silent" | "error" | "warn" | "info" | "debug";
}
