/**
 * The check of a bag for somebody who does not have this program: Python's own library and the command `openssl`.
 * It is printed in every bag's README and run by the tests; it shares no line with the checker.
 */
export const RECIPE = String.raw`import hashlib, json, os, subprocess, sys, tempfile

def signed(key, text, signature):  # Ed25519 by openssl, 3.0 or newer
    with tempfile.TemporaryDirectory() as folder:
        def file(name, content):
            path = os.path.join(folder, name)
            with open(path, "wb") as out:
                out.write(content)
            return path
        der = bytes.fromhex("302a300506032b6570032100" + key)
        return subprocess.run(
            ["openssl", "pkeyutl", "-verify", "-rawin", "-pubin", "-keyform", "DER",
             "-inkey", file("key", der), "-sigfile", file("sig", bytes.fromhex(signature)),
             "-in", file("text", text.encode())], capture_output=True).returncode == 0

def without(line, field, value):  # the canonical text without one of its fields
    part = ',"%s":"%s"' % (field, value)
    assert line.count(part) == 1, line
    return line.replace(part, "")

def lines(name):
    with open(name, encoding="utf-8", newline="\n") as source:
        return source.read().split("\n")[:-1]

def sha(*parts):
    return hashlib.sha256(b"".join(parts)).digest()

def root(leaves):
    if len(leaves) == 0:
        return sha()
    if len(leaves) == 1:
        return leaves[0]
    split = 1
    while 2 * split < len(leaves):
        split *= 2
    return sha(b"\x01", root(leaves[:split]), root(leaves[split:]))

bad, ids, last = [], [], {}
for place, line in enumerate(lines("data/entries.jsonl"), 1):
    entry = json.loads(line)
    text = without(without(line, "id", entry["id"]), "signature", entry["signature"])
    if hashlib.sha256(text.encode()).hexdigest() != entry["id"]:
        bad.append("entry %d: its content is not what its id says" % place)
    if not signed(entry["device"], text, entry["signature"]):
        bad.append("entry %d: not signed by its device" % place)
    last.setdefault(entry["device"], {})[entry["sequence"]] = entry
    ids.append(entry["id"])
for device, chain in last.items():
    before = 0
    for number in sorted(chain):
        if number != before + 1:
            bad.append("device %s: entries %d to %d are missing" % (device, before + 1, number - 1))
        elif before and chain[number]["previous"] != chain[before]["id"]:
            bad.append("device %s: entry %d does not follow the one before" % (device, number))
        before = number
if ids != lines("data/ids.txt"):
    bad.append("data/ids.txt lists other entries")
leaves = [sha(b"\x00", bytes.fromhex(one)) for one in ids]
covered = 0
for line in lines("data/heads.jsonl"):
    head = json.loads(line)
    if not signed(head["key"], without(line, "signature", head["signature"]), head["signature"]):
        bad.append("head over %d entries: signature wrong" % head["size"])
    elif len(leaves) < head["size"] or root(leaves[:head["size"]]).hex() != head["root"]:
        bad.append("head over %d entries: does not fit" % head["size"])
    else:
        covered = max(covered, head["size"])
        print("head over %d entries, root %s, of %s, key %s" % (head["size"], head["root"], head["at"], head["key"]))
if covered != len(ids):
    bad.append("no head covers all %d entries" % len(ids))
for line in lines("data/seals.jsonl"):
    found = json.loads(line)
    seal = found["seal"]
    text = line[line.index('"statement":') + len('"statement":'):-2]
    state = "valid" if signed(seal["public_key"], text, seal["signature"]) else "WRONG"
    who = seal["statement"]
    print("signature %s: %s, %s, %s, %s" % (state, who["name"], who["meaning"], who["about"], who["at"]))
    if state == "WRONG":
        bad.append("seal in entry %d: signature wrong" % found["place"])
print("\n".join(bad) if bad else "nothing was changed: %d entries" % len(ids))
sys.exit(1 if bad else 0)
`;
