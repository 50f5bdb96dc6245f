import type { Sentences } from "./sentences.ts";

export const serverSentences: Sentences = {
  "server.not-found": "There is nothing at this address.",
  "server.bad-address": "The address of the request cannot be read.",
  "server.bad-request": "The request cannot be understood.",
  "server.request-field": "The field {field} of the request is not as it should be: {found}.",
  "server.body-not-json": "The body of the request is no JSON.",
  "server.body-too-large": "The body of the request is larger than {expected} bytes.",
  "server.media-type": "The body of the request is of a kind that is not taken here: {found}.",
  "server.form-body": "A body of the kind {found} is not taken, because any page could send it. Send JSON.",
  "server.foreign-origin": "The request was made by another site ({found}) and was refused.",
  "server.foreign-host":
    "This server answers on this machine only and not under the name {found}. Open it as 127.0.0.1.",
  "server.too-many-requests": "Too many requests. Wait {seconds} seconds.",
  "server.mistake":
    "The server made a mistake; the request may not have been done. The log names it as {request}.",
  "server.not-ready": "The database does not answer at the moment. Try again in a minute.",
  "server.log-changed":
    "The log of the job {job} no longer begins with the {size} entries that this office has signed. Nothing more is signed; compare it with a back-up and with an evidence file.",
  "server.no-such-size": "The tree has {expected} entries; a tree of {found} was asked for.",
  "server.file": "{file} cannot be read or written: {found}.",
  "server.era":
    "The file or table that counts the restores of this office holds {found}, which is no whole number. Restore the latest back-up.",
  "server.port-taken":
    "Another program listens on port {port} of {host} already. Stop it or name another port.",
  "server.cannot-listen": "The server cannot listen on port {port} of {host}: {found}.",
  "server.setting": "The setting {setting} is {found}; expected: {expected}.",
  "server.setting-secret":
    "{setting} holds a password, which everybody on this machine could read. Give the address in {expected} or in a file named by {expected}_FILE.",
  "server.setting-file": "The file {file}, named by {setting}, cannot be used: {found}.",
  "server.setting-short": "{setting} is too short: at least {expected} signs, made by chance.",
};
