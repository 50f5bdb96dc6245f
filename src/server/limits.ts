/** What a server bears. docs/running-a-server.md lists the same numbers. */

/** Requests a minute of one signed-in person or program, all routes together. A large outbox is sent in some thousands of them. */
export const REQUESTS_A_MINUTE_PERSON = 6000;
/** Requests a minute of one address from which nobody has signed in. */
export const REQUESTS_A_MINUTE_ADDRESS = 600;
/** Requests a minute of one person for what costs much: archives, proofs, computations in the request itself. */
export const COSTLY_REQUESTS_A_MINUTE = 30;

/** A body unless its route says otherwise: one message of entries fits many times. */
export const MAX_BODY_BYTES = 1_048_576;
/** A part of a file and the message around it. */
export const MAX_PART_BODY_BYTES = 262_144 + 1024;
/** A whole file at once: a job folder, a template. */
export const MAX_UPLOAD_BYTES = 104_857_600;
/** A message from a browser over a WebSocket; what it has to say is short. */
export const MAX_SOCKET_MESSAGE_BYTES = 4096;

/** From the first byte of a request to its last, milliseconds; slower ones are cut. */
export const REQUEST_TIMEOUT_MS = 120_000;
/** How long a server that stops waits for what runs, milliseconds. */
export const STOP_TIMEOUT_MS = 10_000;
