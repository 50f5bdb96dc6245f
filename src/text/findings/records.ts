import type { Sentences } from "./sentences.ts";

export const recordsSentences: Sentences = {
  "records.not-json": "{field} holds something that cannot be written down ({found}).",
  "records.number-not-finite":
    "{field} is not a number that can be written down ({found}). Leave it out where nothing was recorded.",
  "records.text-surrogate": "{field} holds half of a character: {found}. Type the text again.",
  "records.text-null":
    "{field} holds the character U+0000, which some stores cannot keep: {found}. Take it out.",
  "records.too-deep": "{field} is nested {found} levels deep, deeper than an entry may be.",
  "records.not-json-text": "This is not JSON, or it was cut on the way ({found}). Send or read it again.",
  "records.key": "This is not a private key. Expected {expected}.",
  "records.no-signatures":
    "This browser or machine cannot make Ed25519 signatures ({found}). Record with another one; this one can be used for viewing.",
  "records.entry-shape": "This is not an entry of the log: {field}: {found}.",
  "records.entry-chain-start":
    "Entry {sequence} of device {device} does not fit the start of a chain: only the first follows nothing, and there the device says what it is.",
  "records.entry-too-large":
    "The entry has {found} bytes; at most {expected} are allowed. Divide it into several.",
  "records.id-mismatch":
    "Entry {sequence} of device {device} was changed after it was written: its content does not fit its name {entry}.",
  "records.signature-wrong":
    "Entry {sequence} of device {device} is not signed by that device, or was changed after signing.",
  "records.other-job": "The entry belongs to another job ({found}).",
  "records.entry-twice": "The entry {entry} stands in the log twice.",
  "records.kind-unknown":
    'Entries of kind "{found}" are not known to this version. They are kept; update the program to see them.',
  "records.kind-newer":
    'An entry of kind "{kind}" was written by a newer version. It is kept; update the program to see it.',
  "records.body-shape": 'An entry of kind "{kind}" is not as it should be: {field}: {found}.',
  "records.chain-gap":
    "Entries {from} to {to} of device {device} are not here. What comes after them does not count until they arrive.",
  "records.chain-fork":
    "Device {device} has two different entries numbered {sequence}: its store was copied, or somebody wrote in its name.",
  "records.chain-link":
    "Entry {sequence} of device {device} does not follow the entry before it: one of the two was exchanged.",
  "records.chain-contradicted":
    "Another device has seen a different entry {sequence} of device {device} than the one that is here.",
  "records.clock-jump":
    "The clock of device {device} was moved by {found} s before entry {sequence}. The order of the entries is not affected.",
  "records.clock-backwards":
    "The clock of device {device} went back by {found} s between two starts of the program, before entry {sequence}. The order of the entries is not affected.",
  "records.clock-monotonic":
    "The running time of device {device} goes backwards at entry {sequence} ({found} s). The order of the entries is not affected.",
  "records.clock-offset":
    "The clock of device {device} was {found} s off the office clock at entry {sequence}. Set the clock of the device.",
  "records.head-shape": "This is not the head of a log: {field}: {found}.",
  "records.head-signature":
    "The head over {size} entries is not signed with the key it names, or was changed.",
  "records.head-cut":
    "The log has {found} entries here, but {expected} were there when the head was made. The end is missing.",
  "records.head-mismatch":
    "The first {size} entries are not those that were there when the head was made: an entry was changed, put in, taken out or moved.",
  "records.seal-nothing": "There is nothing about {about} that could be signed for.",
  "records.seal-shape": "This is not a signature of a person: {found}.",
  "records.seal-signature": "The signature of {name} for {about} is not valid: it was changed after signing.",
  "records.seal-key":
    "The signature for {about} was made with a key that {name} has not announced in this job.",
  "records.seal-entries-missing":
    "{name} signed for {expected} entries about {about}; only {found} are here. Fetch the others and check again.",
  "records.seal-broken": "The entries about {about} are not those that {name} signed for.",
  "records.message-shape": "The message is not as it should be: {field}: {found}.",
};
