import websocket from "@fastify/websocket";
import type { AppInstance } from "../app-instance.ts";
import { MAX_SOCKET_MESSAGE_BYTES } from "../limits.ts";

/** "Going away": the client knows that it may come again (RFC 6455, section 7.4.1). */
const GOING_AWAY = 1001;

/** Lets routes take WebSockets; a server that stops tells every client so. */
export async function openSockets(app: AppInstance): Promise<void> {
  await app.register(websocket, {
    options: { maxPayload: MAX_SOCKET_MESSAGE_BYTES, clientTracking: true },
    errorHandler: (thrown, socket, request) => {
      request.log.warn({ found: thrown.message }, "a WebSocket broke");
      socket.terminate();
    },
    preClose: (done) => {
      for (const client of app.websocketServer.clients) client.close(GOING_AWAY, "the server stops");
      app.websocketServer.close(() => {});
      done();
    },
  });
}
