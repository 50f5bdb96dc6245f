import { RECIPE } from "./recipe.ts";

/** What a person reads who has opened the bag and nothing else. Its lines hold nothing that comes from the log but job and count. */
export function readmeText(job: string, entries: number): string {
  return `EVIDENCE OF A SURVEY JOB

Job: ${encodeURIComponent(job)}
Entries: ${entries}

This folder holds everything that was written down in one job: each entry as it was made, signed by the device that made it,
the signatures of people, and the files that entries name (photos, reports). It can be checked without an account, without the
office and without the program that wrote it. Nothing in it needs to be trusted before it is checked, this text included.

WHAT IS IN IT

  data/entries.jsonl   all entries, one on a line, in the order in which they arrived at the office
  data/ids.txt         their ids, in the same order
  data/heads.jsonl     heads: so many entries with this root, signed by the office
  data/seals.jsonl     signatures of people for runs and reports, taken out of the entries
  data/keys.json       public keys of office, devices and people, with the entries that announced them
  data/blobs/          files named by entries, each under its SHA-256
  manifest-sha256.txt  SHA-256 of each of these (BagIt, RFC 8493)

HOW TO CHECK IT

1. That no file was damaged on the way, in this folder:

     sha256sum -c manifest-sha256.txt
     sha256sum -c tagmanifest-sha256.txt

   Whoever changes a file on purpose can write new manifests. So:

2. That nothing was changed, put in, taken out or moved. With the program: toeline verify FILE. Or with Python 3 and OpenSSL 3 alone:
   save the lines between the two marks below as check.py, read them, and run "python3 check.py" in this folder.
   Better still, take the same lines from the program's documentation and not from here.

3. That it is the whole story and not another one. Whoever makes every signature anew, with keys of their own, makes a folder
   that fits itself; and the folder of an earlier day fits itself too. Compare with what you have from elsewhere:
   - the office's public key: the "key" of the heads must be the one that the office has told you;
   - a head that is printed on a report or was sent to you: "size" and "root" must be among the heads here, or
     toeline verify FILE --head SIZE:ROOT must say that it fits.

Times are what the devices' clocks said. How the parts are made is written in the program's documentation under
docs/formats/evidence-bag.md and docs/formats/entry-log.md.

-----8<----- check.py
${RECIPE}-----8<-----
`;
}
