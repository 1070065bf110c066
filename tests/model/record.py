# Verifies a whole record from the handbook alone (`bookmatch explain ledger`, `explain mark`): the chain of the
# ledger, issues and marks, what was handed over and its seals. Prints what it verified; ends with 1 and says what
# is wrong otherwise.
import hashlib
import hmac
import json
import os
import re
import sys

HANDED = {
    "bookmatch response 1": "decided",
    "bookmatch by hand 1": "decided",
    "bookmatch readings 1": "measured",
    "bookmatch delivery 1": "received",
    "bookmatch acknowledgement 1": "acknowledged",
}
FACTS = {"opened", "issued", "invited", "withdrawn", "decided", "confirmed", "not theirs", "condition met", "measured"}
FACTS |= {"received", "taken back", "sent", "acknowledged"}


class Wrong(Exception):
    pass


def wants(holds, what):
    if not holds:
        raise Wrong(what)


def canonical(value):
    """RFC 8785 for texts, lists, objects, true, false, null and whole numbers."""
    if isinstance(value, dict):
        keys = sorted(value, key=lambda key: key.encode("utf-16-be"))
        return "{" + ",".join(canonical(key) + ":" + canonical(value[key]) for key in keys) + "}"
    if isinstance(value, list):
        return "[" + ",".join(canonical(item) for item in value) + "]"
    wants(not isinstance(value, float), f"{value} is no whole number")
    return json.dumps(value, ensure_ascii=False)


def digest(value):
    return hashlib.sha256(canonical(value).encode()).hexdigest()


def read(path):
    """Canonical JSON of a file, and its bytes."""
    with open(path, "rb") as file:
        kept = file.read()
    try:
        value = json.loads(kept)
    except ValueError:
        raise Wrong(f"{path} is no JSON") from None
    wants(canonical(value).encode() == kept, f"{path} is not canonical")
    return value, kept


def ledger(record):
    """The lines, each linked to the one before."""
    with open(f"{record}/ledger.jsonl", "rb") as file:
        kept = file.read()
    wants(kept.endswith(b"\n"), "the last line has no end")
    lines, before = [], "0" * 64
    for number, bytes_ in enumerate(kept[:-1].split(b"\n"), 1):
        try:
            line = json.loads(bytes_)
            same = canonical(line).encode() == bytes_
        except (ValueError, Wrong):
            raise Wrong(f"line {number} is no canonical JSON") from None
        wants(same and set(line) == {"at", "before", "fact", "line", "sha256"}, f"line {number} is not canonical")
        wants(line["line"] == number and line["before"] == before, f"line {number} does not follow the one before")
        before = line["sha256"]
        wants(digest({key: line[key] for key in line if key != "sha256"}) == before, f"line {number} has another digest")
        wants(line["fact"]["is"] in FACTS, f"line {number} is of no kind that is known")
        wants((line["fact"]["is"] == "opened") == (number == 1), f"line {number} is no opening, or should be one")
        lines.append(line)
    return lines


def issue(record, line, book, told):
    fact = line["fact"]
    name = f"{record}/issues/{fact['number']:04}.json"
    value, kept = read(name)
    wants(hashlib.sha256(kept).hexdigest() == fact["sha256"], f"{name} has another digest")
    for key in ("number", "for", "on"):
        wants(value[key] == fact[key], f"{name} has another `{key}`")
    wants(value["book"] == book and len(value["items"]) == fact["items"], f"{name} is of another book or has other items")
    if "after" in value:
        stated = {"line": line["line"] - 1, "sha256": line["before"]}
        wants(value["after"] == stated, f"{name} was made on another ledger")
    for item in value["items"] + value.get("built", []):
        wants(digest(item["content"]) == item["mark"], f"{name}: a mark is not of its content")
        told["marks"] += 1
    return value


def response(record, fact, lines, told):
    """What was handed over, by its digest, against the line that names it."""
    name = f"{record}/responses/{fact['response']}.json"
    sealed = f"{record}/responses/{fact['response']}-sealed.json"
    if fact.get("by") == "private link" and os.path.exists(sealed):
        name = sealed
    value, _ = read(name)
    bare = {key: value[key] for key in value if key != "mac"}
    wants(digest(bare) == fact["response"], f"{name} has another digest")
    wants(HANDED.get(value["format"]) == fact["is"], f"{name} is of another form than its line")
    wants((value["format"] == "bookmatch by hand 1") == (fact.get("by") == "hand"), f"{name} was given in another way")
    wants(value["book"] == lines[0]["fact"]["book"], f"{name} is of another book")
    for key in ("issue", "who", "made", "device", "delivery", "readings", "how", "given"):
        if key in value and (key in fact or key != "issue"):
            wants(value[key] == fact.get(key), f"{name} has another `{key}` than its line")
    if fact["is"] == "received":
        wants(value["items"] == fact["items"], f"{name} has other items than its line")
        for photo in photographs(fact):
            photograph(record, photo, told)
    if fact["is"] == "decided":
        taken = [(one["room"], one["item"]) for one in fact["items"] + fact.get("refused", [])]
        wants(all(one in value["items"] for one in fact["items"]), f"{name} says something else than its line")
        wants(sorted(taken) == sorted((one["room"], one["item"]) for one in value["items"]), f"{name} has other items")
    stated = value.get("ledger")
    if stated:
        line = lines[stated["line"] - 1] if 0 < stated["line"] <= len(lines) else {}
        wants(line.get("sha256") == stated["sha256"], f"{name} was made over another ledger")
    told["responses"] += 1
    if fact.get("by") == "private link":
        wants("mac" in value, f"{name} bears no seal")
        seal(record, fact, value["mac"], canonical(bare), told)
    if "scan" in value:
        scan(record, value["scan"])


def photographs(fact):
    """Those that were handed over with a delivery."""
    return [photo for item in fact["items"] for photo in item.get("photos", []) if "bytes" in photo]


def photograph(record, photo, told):
    """Its digest and size, and that no part of it is more than its picture."""
    name = f"{record}/photographs/{photo['sha256']}.jpg"
    with open(name, "rb") as file:
        kept = file.read()
    wants(hashlib.sha256(kept).hexdigest() == photo["sha256"], f"{name} has another digest")
    wants(len(kept) == photo["bytes"], f"{name} has another size")
    wants(kept[:2] == b"\xff\xd8" and kept[-2:] == b"\xff\xd9", f"{name} is no whole JPEG")
    at, marks = 2, set()
    while kept[at + 1] != 0xDA:
        wants(kept[at] == 0xFF, f"{name} is no JPEG")
        marks.add(kept[at + 1])
        at += 2 + int.from_bytes(kept[at + 2 : at + 4], "big")
    wants(not marks & ({*range(0xE1, 0xEE)} | {0xEF, 0xFE}), f"{name} holds more than its picture")
    told["photographs"] += 1


def seal(record, fact, mac, signed, told):
    try:
        with open(f"{record}/keys/{fact['who']}.key", encoding="ascii") as file:
            key = bytes.fromhex(file.read().strip())
    except FileNotFoundError:
        key = b""
    if hashlib.sha256(key).hexdigest()[:8] != fact["key"]:
        told["seals of keys that are gone"] += 1
        return
    expected = hmac.new(key, signed.encode(), hashlib.sha256).hexdigest()
    wants(hmac.compare_digest(expected, mac), f"response {fact['response'][:8]} bears another seal")
    told["seals"] += 1


def scan(record, name):
    with open(f"{record}/scans/{name}", "rb") as file:
        kept = hashlib.sha256(file.read()).hexdigest()
    wants(kept == name.split(".")[0], f"scan {name} has another digest")


def key_counts(fact, keys):
    """Which keys count, line after line."""
    if fact["is"] == "invited":
        keys[fact["who"]] = fact["key"]
    elif fact["is"] == "withdrawn" and keys.get(fact["who"]) == fact["key"]:
        del keys[fact["who"]]
    elif fact.get("by") == "private link":
        wants(keys.get(fact["who"]) == fact["key"], f"response {fact['response'][:8]} is sealed with a key that did not count")


def nothing_unnamed(record, lines):
    facts = [line["fact"] for line in lines]
    named = {
        "issues": {f"{fact['number']:04}" for fact in facts if fact["is"] == "issued"},
        "responses": {fact["response"] for fact in facts if fact["is"] in HANDED.values()},
        "photographs": {one["sha256"] for fact in facts if fact["is"] == "received" for one in photographs(fact)},
        "keys": {fact["who"] for fact in facts if fact["is"] == "invited"},
    }
    for folder, names in named.items():
        path = f"{record}/{folder}"
        for name in os.listdir(path) if os.path.isdir(path) else []:
            if not name.startswith("."):
                stem = re.sub(r"(-sealed)?\.(json|jpg|key)$", "", name)
                wants(stem in names, f"{path}/{name} is named by no line")


def verify(record):
    what = ["lines", "issues", "marks", "responses", "photographs", "seals", "seals of keys that are gone"]
    told = dict.fromkeys(what, 0)
    lines, keys = ledger(record), {}
    head, _ = read(f"{record}/head.json")
    wants(head == {"line": len(lines), "sha256": lines[-1]["sha256"]}, "the head is of another ledger, or lines are lost")
    shown = {}
    for line in lines:
        fact = line["fact"]
        told["lines"] += 1
        key_counts(fact, keys)
        if fact["is"] == "issued":
            shown[fact["number"]] = issue(record, line, lines[0]["fact"]["book"], told)
            told["issues"] += 1
        elif fact["is"] in HANDED.values():
            response(record, fact, lines, told)
        if fact["is"] == "decided":
            here = [(item["room"], item["item"], item["mark"]) for item in shown[fact["issue"]]["items"]]
            for asked in fact["items"]:
                wants((asked["room"], asked["item"], asked["mark"]) in here, "a decision is of a mark that was not shown")
    nothing_unnamed(record, lines)
    return told


def main():
    for what, count in verify(sys.argv[1]).items():
        print(f"{what}: {count}")


try:
    main()
except (Wrong, OSError, KeyError) as wrong:
    print(f"wrong: {wrong}")
    sys.exit(1)
