/** What tests use of the package that stands behind the server's WebSockets; it brings no types of its own. */
declare module "ws" {
  export class WebSocket {
    constructor(address: string, options: { readonly headers: Readonly<Record<string, string>> });
    addEventListener(type: "message", listener: (event: { readonly data: unknown }) => void): void;
    addEventListener(type: "close" | "error", listener: () => void): void;
    close(): void;
  }
}
