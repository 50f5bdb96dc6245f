import type { Sentences } from "./sentences.ts";

export const syncSentences: Sentences = {
  "sync.no-answer":
    "The office at {address} did not answer ({found}). What was recorded is safe on this device and is sent later.",
  "sync.silent":
    "The office has said nothing for {seconds} s. What was recorded is safe on this device and is sent later.",
  "sync.signed-out":
    "Nobody is signed in at the office from here. What was recorded is safe on this device: sign in to send it.",
  "sync.not-allowed":
    "The office does not allow this ({found}). What was recorded is safe on this device; ask whoever manages the job.",
  "sync.no-such-job":
    "The office does not know this job, or you may not see it. What was recorded is safe on this device; ask whoever manages the job.",
  "sync.busy":
    "The office is busy and asks to wait {seconds} s. What was recorded is safe on this device and is sent then.",
  "sync.office-failed":
    "The office could not do it (status {status}). What was recorded is safe on this device and is sent later.",
  "sync.refused":
    "The office refused this (status {status}): {found} It stays on this device; the rest is sent.",
  "sync.answer-damaged":
    "The answer of the office could not be read, or was changed on the way ({found}). It is asked again later.",
  "sync.client-too-old":
    "This program is too old to send to the office or to fetch from it (it speaks {found}, the office {expected}). You can go on recording, and save a copy; update the program to send.",
  "sync.address": "{found} is no address of an office. Write it as in https://office.example.",
  "sync.insecure-address":
    "The token would travel to {address} where everybody on the way can read it. Use an address that begins with https.",
  "sync.not-named":
    "The office has said nothing about this entry. It is safe on this device and is sent again later.",
  "sync.page-damaged":
    "{count} entries came from the office damaged. They are kept aside as they came and are asked for again.",
  "sync.office-restored":
    "The office was restored from a back-up. What it lost and this device holds was sent again.",
  "sync.office-lost":
    "The office did not hold everything that it had named as held. Everything was compared anew, and what this device holds was sent again. Tell whoever runs the office.",
  "sync.sets-differ":
    "This device and the office do not hold the same entries, although everything was sent and fetched. Save a copy, and tell whoever runs the office.",
  "sync.file-stuck": "The file {blob} does not get on. It is safe on this device and is sent again later.",
  "sync.file-short": "The file {blob} ended after {found} bytes. The rest is fetched later.",
  "sync.file-too-large": "The file has {found} bytes; at most {expected} can be sent.",
  "sync.file-not-named": "No entry at that place names the file {blob}. Send the entry first.",
  "sync.file-not-here": "The file {blob} has not come to the office as a whole yet.",
  "sync.kind-not-known":
    'Entries of kind "{kind}" are not known to this office. It is kept aside until the office is updated.',
  "sync.kind-not-allowed":
    'Whoever sends an entry of kind "{kind}" needs the right "{right}" in this job. It is kept aside; somebody with that right can take it.',
  "sync.aside-unknown": "Nothing is kept aside under this name.",
  "sync.aside-not-sound":
    "This cannot be taken into the log: it is no sound entry of this job. It stays aside as it came.",
};
