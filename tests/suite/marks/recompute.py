# Computes every mark of an issue and every link of a ledger anew, from the words of the format alone.
import hashlib
import json
import sys


def canonical(value):
    """RFC 8785 for texts, lists, objects, true, false, null and whole numbers."""
    if isinstance(value, dict):
        keys = sorted(value, key=lambda key: key.encode("utf-16-be"))
        return "{" + ",".join(canonical(key) + ":" + canonical(value[key]) for key in keys) + "}"
    if isinstance(value, list):
        return "[" + ",".join(canonical(item) for item in value) + "]"
    if isinstance(value, int) and not isinstance(value, bool):
        assert abs(value) < 2**53, value
    assert not isinstance(value, float), value
    return json.dumps(value, ensure_ascii=False)


def digest(value):
    return hashlib.sha256(canonical(value).encode()).hexdigest()


def has_number(value):
    if isinstance(value, dict):
        return any(map(has_number, value.values()))
    if isinstance(value, list):
        return any(map(has_number, value))
    return isinstance(value, (int, float)) and not isinstance(value, bool)


record = sys.argv[1]
before = "0" * 64
issues = 0
with open(f"{record}/ledger.jsonl", "rb") as ledger:
    for number, bytes_ in enumerate(ledger, 1):
        line = json.loads(bytes_)
        assert bytes_ == canonical(line).encode() + b"\n", number
        assert (line["line"], line["before"]) == (number, before), number
        before = line.pop("sha256")
        assert digest(line) == before, number
        fact = line["fact"]
        if fact["is"] != "issued":
            continue
        issues += 1
        with open(f"{record}/issues/{fact['number']:04}.json", "rb") as file:
            kept = file.read()
        assert hashlib.sha256(kept).hexdigest() == fact["sha256"], fact
        issue = json.loads(kept)
        assert len(issue["items"]) == fact["items"]
        for item in issue["items"]:
            assert not has_number(item["content"]), item["item"]
            assert (item["content"]["room"], item["content"]["item"]) == (item["room"], item["item"])
            print("mark", item["room"], item["item"], "holds" if digest(item["content"]) == item["mark"] else "differs")
            for option in item["content"]["options"]:
                for picture in option["pictures"]:
                    print("picture", picture["sha256"])
print("issues", issues)
