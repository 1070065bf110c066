# A model of who approved what, by the pages of the handbook (`bookmatch explain ledger`, `explain mark`). It reads histories from its input, one JSON a line, works out what each comes
# to, and stops at the first of which the program says something else.
import copy
import hashlib
import json
import sys
from collections import Counter
from datetime import date, datetime, timedelta, timezone

MINUTES = 300  # by which two clocks may differ, in seconds
STRICTEST_FIRST = ["rejected", "revise and resubmit", "approved as noted", "approved"]
AGREED = STRICTEST_FIRST[2:]
CONTENTS = {}  # all that any item is shown as, by its mark


def canonical(value):
    """RFC 8785 for contents of this model: their keys are plain letters, and they hold no number."""
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"))


def digest(value):
    return hashlib.sha256(canonical(value).encode()).hexdigest()


class Remembering(dict):
    def __init__(self, work_out):
        self.work_out = work_out

    def __missing__(self, key):
        self[key] = self.work_out(key)
        return self[key]


SECONDS = Remembering(
    lambda text: int(datetime.strptime(text, "%Y-%m-%dT%H:%M:%SZ").replace(tzinfo=timezone.utc).timestamp())
)


def day_in(words):
    """The one day that some words name; none where they name two."""
    days = set()
    for word in "".join(c if c.isdigit() or c == "-" else " " for c in words).split():
        try:
            days.add(date.fromisoformat(word))
        except ValueError:
            pass
    return days.pop() if len(days) == 1 else None


def version(content):
    return int(content.get("shown", "1"))


def says_more(newer, older):
    """Whether a newer version of a content says anything that an older one has no field for."""
    if isinstance(newer, list) and isinstance(older, list):
        return any(says_more(one, other) for one, other in zip(newer, older))
    if isinstance(newer, dict) and isinstance(older, dict):
        keys = [key for key in newer if key != "shown"]
        return any(key not in older or says_more(newer[key], older[key]) for key in keys)
    return False


def other_choices(mark):
    """The marks of the same with another option chosen, or none."""
    content = CONTENTS[mark]
    marks = set()
    for option in [None] + [option["id"] for option in content["options"]]:
        other = copy.copy(content)
        if option is None and version(content) > 1:
            other.pop("chosen", None)
        else:
            other["chosen"] = option
        if option != content.get("chosen"):
            marks.add(digest(other))
    return marks


def alone(mark, chosen):
    """A content with one of its options alone."""
    content = {key: value for key, value in CONTENTS[mark].items() if key != "chosen"}
    return digest({**content, "options": [option for option in content["options"] if option["id"] == chosen]})


ALONE = Remembering(lambda pair: alone(*pair))
OTHER_CHOICES = Remembering(other_choices)
MORE = Remembering(lambda pair: says_more(CONTENTS[pair[0]], CONTENTS[pair[1]]))


class Item:
    """What an item is now, by the versions of the content that count."""

    def __init__(self, marks, asked, oldest):
        newest = marks[-1]
        self.marks = [marks[asked - 1]]
        for number, mark in enumerate(marks, 1):
            if number > asked or (oldest <= number < asked and not MORE[(newest, mark)]):
                self.marks.append(mark)
        content = CONTENTS[newest]
        self.chosen = content.get("chosen")
        self.is_open = self.chosen is None and len(content["options"]) > 1

    def is_shown_as(self, mark):
        return mark in self.marks

    def stands(self, mark, option, issued):
        """A word holds as well of what differs by options alone that are not chosen."""
        if self.holds(mark, option):
            return True
        if self.chosen is None or mark not in issued:
            return False
        if (option or CONTENTS[mark].get("chosen")) != self.chosen:
            return False
        return any(ALONE[(mark, self.chosen)] == ALONE[(own, self.chosen)] for own in self.marks)

    def holds(self, mark, option):
        """A word holds of what is shown; and of what differs by this alone, that its option was written down since."""
        if mark in self.marks:
            return option is None or self.chosen is None or self.chosen == option
        if option is None or option != self.chosen:
            return False
        return any(mark in OTHER_CHOICES[own] for own in self.marks)


class Said:
    """What a response says of one item."""

    def __init__(self, line, at, response, asked):
        self.line, self.at, self.asked = line, at, asked
        self.response, self.issue, self.who = response["response"], response["issue"], response["who"]
        self.device = response.get("device")
        self.made = SECONDS[response["made"]]

    def says(self):
        note = self.asked.get("note") if self.asked["decision"] == "approved as noted" else None
        return (self.asked["mark"], self.asked["decision"], self.asked.get("option"), note)


class Record:
    def __init__(self, history):
        self.issues = {issue["number"]: issue for issue in history["issues"]}
        self.shown = {item["mark"] for issue in history["issues"] for item in issue["items"]}
        self.asked_whose, self.taken_back = {}, set()
        self.issued, self.responses, self.first_line, self.proved = {}, [], {}, set()
        self.met, self.met_marks, self.deliveries = set(), [], []
        for line in history["lines"]:
            number, at, fact = line["line"], SECONDS[line["at"]], line["fact"]
            if fact["is"] == "issued":
                self.issued.setdefault(fact["number"], (number, at, fact["on"]))
            elif fact["is"] == "decided":
                # What comes again with its proof was recorded when it came first.
                self.first_line.setdefault(fact["response"], (number, at))
                self.responses.append((number, fact))
                if fact["by"] != "unsigned":
                    self.proved.add(fact["response"])
            elif fact["is"] in ("confirmed", "not theirs"):
                self.asked_whose[fact["response"]] = fact["is"]
            elif fact["is"] == "taken back":
                self.taken_back.add(fact["response"])
            elif fact["is"] == "received":
                self.deliveries.append((number, at, fact))
            elif fact["is"] == "condition met":
                if "response" in fact:
                    self.met.add((fact["response"], fact["room"], fact["item"]))
                else:
                    self.met_marks.append((number, fact))
        self.known = self.those_known()
        self.odd = self.odd_moments()
        self.close_older_conditions()

    def is_known(self, response):
        return response in self.proved or self.asked_whose.get(response) == "confirmed"

    def those_known(self):
        """Responses that are known to be of whom they name, each once, with all that was ever taken of it."""
        known = {}
        for _, fact in self.responses:
            if self.is_known(fact["response"]):
                before = known.get(fact["response"], {"items": []})["items"]
                here = {(asked["room"], asked["item"]) for asked in fact["items"]}
                items = [asked for asked in before if (asked["room"], asked["item"]) not in here] + fact["items"]
                known[fact["response"]] = {**fact, "items": items}
        return list(known.values())

    def close_older_conditions(self):
        """A line that names no response closes the condition that was recorded last before it of that mark."""
        for number, fact in self.met_marks:
            of, stated = (fact["room"], fact["item"], fact["mark"]), None
            for line, response in self.responses:
                if line < number and self.is_known(response["response"]):
                    for asked in response["items"]:
                        if (asked["room"], asked["item"], asked["mark"]) == of:
                            if asked["decision"] == "approved as noted":
                                stated = response["response"]
            if stated:
                self.met.add((stated, fact["room"], fact["item"]))

    def span(self, response):
        """The first and the last moment that it can have been made at, by what it says itself."""
        if response["by"] != "hand":
            return SECONDS[response["made"]], SECONDS[response["made"]]
        given = response.get("given")
        return (SECONDS[given["from"]], SECONDS[given["until"]]) if given else None

    def odd_moments(self):
        odd, devices = {}, {}
        for response in self.known:
            number, at = self.first_line[response["response"]]
            span, issued = self.span(response), self.issued.get(response["issue"])
            if span and span[0] > at + MINUTES:
                odd[number] = "ahead"
            elif span and issued and span[1] + MINUTES < issued[1]:
                odd[number] = "before its issue"
            if "device" in response:
                turn = (response["device"]["turn"], SECONDS[response["made"]], number)
                devices.setdefault(response["device"]["id"], []).append(turn)
        for turns in devices.values():
            turns.sort()
            made = [made for _, made, _ in turns]
            if any(made[at] + MINUTES < max(made[:at]) for at in range(1, len(made))):
                for _, _, number in turns:
                    odd.setdefault(number, "backwards")
        return odd

    def window(self, response):
        """Between which moments it was made."""
        number, at = self.first_line[response["response"]]
        issued = self.issued.get(response["issue"])
        anywhen = (min(issued[1], at) if issued else at, at)
        span = self.span(response)
        if number in self.odd:
            return anywhen
        if response["by"] != "hand":
            return span[0] - MINUTES, span[1] + MINUTES
        if span:
            return span
        day = day_in(response.get("how", ""))
        if day is None:
            return anywhen
        start = int(datetime(day.year, day.month, day.day, tzinfo=timezone.utc).timestamp())
        return start - 14 * 3600, start + 36 * 3600 - 1

    def of_item(self, room, item, who):
        """What somebody who is known said of an item."""
        for response in self.known:
            if response["who"] == who:
                for asked in response["items"]:
                    if (asked["room"], asked["item"]) == (room, item):
                        yield Said(*self.first_line[response["response"]], response, asked), response

    def newest(self, room, item, who):
        """What somebody said last of an item: the strictest first where it is not known which; and if it is known
        to be theirs."""
        said = []
        for one, response in self.of_item(room, item, who):
            one.earliest, one.latest = self.window(response)
            said.append(one)
        if not said:
            return self.newest_unknown(room, item, who), False
        last = [one for one in said if not any(self.is_before(one, other) for other in said)] or said
        if len({one.says() for one in last}) == 1:
            return [max(last, key=lambda one: (one.made, one.response))], True
        return sorted(last, key=lambda one: (STRICTEST_FIRST.index(one.asked["decision"]), one.made, one.response)), True

    def newest_unknown(self, room, item, who):
        """What came in last in somebody's name, of what nobody said to be not theirs."""
        for number, response in reversed(self.responses):
            if response["who"] == who and self.asked_whose.get(response["response"]) != "not theirs":
                for asked in response["items"]:
                    if (asked["room"], asked["item"]) == (room, item):
                        return [Said(number, 0, response, asked)]
        return []

    def is_theirs(self, said, approver):
        """Whether the terms of the issue that was answered give that id the name that it has now."""
        terms = self.issues[said.issue]["terms"] or {"approvers": []}
        return all(one["name"] == approver["name"] for one in terms["approvers"] if one["id"] == approver["id"])

    def tells(self, one, other):
        """Whether anything tells that one was said before another."""
        same = one.device and other.device and one.device["id"] == other.device["id"]
        by_device = same and one.device["turn"] < other.device["turn"]
        by_issue = one.line < self.issued.get(other.issue, (0,))[0]
        return by_device or by_issue or one.latest < other.earliest

    def is_before(self, one, other):
        # Signs that contradict each other tell nothing.
        return self.tells(one, other) and not self.tells(other, one)


def days_between(one, other):
    return (date.fromisoformat(other) - date.fromisoformat(one)).days


def utc_day(seconds):
    return (datetime(1970, 1, 1) + timedelta(seconds=seconds)).date().isoformat()


def held(record, issue, now):
    """Why nothing can be ordered on what was approved in an issue."""
    terms, names = issue["terms"], {one["id"]: one["name"] for one in now["approvers"]}
    if terms is None:
        signed = {response["who"] for _, response in record.responses if "key" in response}
        changes = len(signed - set(names))
    else:
        then = {one["id"]: one["name"] for one in terms["approvers"]}
        changes = int(terms.get("tax_in_prices", False) != now.get("tax_in_prices", False))
        changes += terms["approval"] != now["approval"] and max(len(then), len(names)) > 1
        changes += sum(then.get(id) != names.get(id) for id in set(then) | set(names))
    found = [["terms", changes]] if changes else []
    latest = None
    for number, (_, at, on) in sorted(record.issued.items(), key=lambda issued: issued[1][0]):
        if number == issue["number"]:
            if days_between(on, utc_day(at)) > 1:
                found.append(["made later", on, utc_day(at)])
            if latest and on < latest[1]:
                found.append(["before another", *latest])
        if latest is None or latest[1] < on:
            latest = [number, on]
    return found


def is_same_who(one, other):
    several = max(len(one["approvers"]), len(other["approvers"])) > 1
    named = [{(who["id"], who["name"]) for who in terms["approvers"]} for terms in (one, other)]
    return named[0] == named[1] and not (several and one["approval"] != other["approval"])


def counts(record, item, of, said, approver, asked_on, deciding):
    """Whether an approval that was given on other terms counts: all approved the same who had to on those."""
    then = record.issues[said.issue]["terms"]
    if not then or not asked_on or is_same_who(then, asked_on) or then["approval"] == "any":
        return True
    for one in then["approvers"]:
        if one["id"] == approver["id"]:
            continue
        last, known = record.newest(*of, one["id"])
        last = [other for other in last if record.is_theirs(other, one)]
        if len(last) != 1 or not known:
            return False
        asked = last[0].asked
        option, mine = asked.get("option"), said.asked.get("option")
        noted = asked["decision"] == "approved as noted" and one["id"] not in deciding
        if asked["decision"] not in AGREED or noted and (last[0].response, *of) not in record.met:
            return False
        if option is None and item.is_open or option and mine and option != mine:
            return False
        if not item.stands(asked["mark"], option, record.shown):
            return False
    return True


def word(record, item, approver, of, asked_on, deciding):
    last, known = record.newest(*of, approver["id"])
    last = [one for one in last if record.is_theirs(one, approver)]
    if not last:
        return None
    first, asked = last[0], last[0].asked
    option = asked.get("option")
    holds = item.stands(asked["mark"], option, record.shown)
    agrees = asked["decision"] in AGREED
    return {
        "who": approver["id"],
        "decision": asked["decision"],
        "option": option,
        "response": first.response,
        "known": known,
        "holds": holds,
        "on other terms": holds and agrees and not counts(record, item, of, first, approver, asked_on, deciding),
        "names no option": holds and agrees and option is None and item.is_open,
        "met": (first.response, *of) in record.met,
        "not known which": [[one.asked["decision"], one.asked.get("option")] for one in last[1:]],
    }


def state(words, names, terms, is_issued):
    """What all words come to, and whose words make it so."""
    known = [word for word in words if word["known"]]
    if any(word["not known which"] for word in known):
        return "not agreed", []
    holding = [word for word in known if word["holds"]]

    def who(wanted):
        return [names[word["who"]] for word in holding if wanted(word)]

    agree = [word for word in holding if word["decision"] in AGREED]
    approving = who(lambda word: word["decision"] in AGREED and not word["names no option"] and not word["on other terms"])
    rejecting = who(lambda word: word["decision"] == "rejected")
    revising = who(lambda word: word["decision"] == "revise and resubmit")
    chosen = {word["option"] for word in agree} - {None}
    if approving and (rejecting or revising or len(chosen) > 1):
        return "not agreed", []
    if rejecting:
        return "rejected", rejecting
    if revising:
        return "to be revised", revising
    wanted = 1 if terms["approval"] == "any" else max(1, len(terms["approvers"]))
    if len(approving) >= wanted:
        still_open = who(lambda word: word["decision"] == "approved as noted" and not word["met"])
        return ("approved as noted", still_open) if still_open else ("approved", [])
    stale = [names[word["who"]] for word in known if not word["holds"] and word["decision"] in AGREED]
    if stale:
        return "changed since signed", stale
    if approving:
        return "approved by some", approving
    if any(not word["known"] for word in words):
        return "unsigned", []
    return ("waiting" if is_issued else "not asked"), []


def came_otherwise(record, item, of):
    """Whether something else came of an item and was taken, and nobody was asked about that since."""
    counting = []
    for number, at, fact in record.deliveries:
        response = fact["response"]
        if response in record.taken_back or record.asked_whose.get(response) != "confirmed":
            continue
        if SECONDS[fact["made"]] <= at + MINUTES:
            of_it = [one for one in fact["items"] if (one["room"], one["item"]) == of]
            counting += [(SECONDS[fact["made"]], fact.get("device"), number, one) for one in of_it]
    if not counting:
        return False

    def when(one):
        made, device, number, _ = one
        before = [
            theirs[0]
            for theirs in counting
            if device and theirs[1] and theirs[1]["id"] == device["id"] and theirs[1]["turn"] < device["turn"]
        ]
        return max([made, *before]), device["turn"] if device else 0, number

    _, _, number, last = max(counting, key=when)
    if all(line["came"] == "approved" for line in last["lines"]) or last.get("kept") != "taken":
        return False
    if item.holds(last["mark"], last.get("option")):
        return True
    for issue in sorted(record.issues):
        for issued in record.issues[issue]["items"]:
            if (issued["room"], issued["item"]) == of and item.is_shown_as(issued["mark"]):
                if record.issues[issue]["for"] == "approval":
                    return record.issued[issue][0] < number
    return True


def told_of_item(record, issue, item, of, terms, is_held):
    names = {one["id"]: one["name"] for one in terms["approvers"]}
    words = [word(record, item, approver, of, issue["terms"], names) for approver in terms["approvers"]]
    words = [word for word in words if word]
    issued = [one for one in issue["items"] if (one["room"], one["item"]) == of]
    stands, whose = state(words, names, terms, bool(issued))
    sure = [word for word in words if word["holds"] and word["known"] and not word["not known which"]]
    given = [word["who"] for word in sure if not word["names no option"] and not word["on other terms"]]
    # Where any one may decide, one word that stands is enough.
    enough = terms["approval"] == "any" and given
    waits_for = [one["name"] for one in terms["approvers"] if one["id"] not in given and not enough]
    if stands == "approved" and is_held:
        stands = "approved, and held"
    if stands == "approved" and came_otherwise(record, item, of):
        stands, waits_for = "came otherwise than approved", []
    options = {word["option"] for word in sure if word["decision"] in AGREED} - {None}
    return {
        "state": stands,
        "whose": whose,
        "asked": any(item.is_shown_as(one["mark"]) for one in issued),
        "waits for": waits_for,
        "chosen": options.pop() if len(options) == 1 else None,
        "words": words,
    }


def withdrawn(record, here, approvers):
    last = {}
    for number in sorted(record.issues):
        for item in record.issues[number]["items"]:
            if (item["room"], item["item"]) not in here:
                last[(item["room"], item["item"])] = (number, item)
    told = []
    for of, (number, item) in last.items():
        approved = []
        for approver in approvers:
            said, known = record.newest(*of, approver["id"])
            said = [one for one in said if record.is_theirs(one, approver)]
            if said and known and said[0].asked["decision"] in AGREED:
                approved.append(approver["name"])
        told.append({"room": of[0], "tag": item["tag"], "name": item["name"], "issue": number, "approved by": approved})
    return sorted(told, key=lambda one: (one["room"], one["tag"]))


def unsigned(record, approvers):
    ids, waiting = [one["id"] for one in approvers], {}
    for _, fact in record.responses:
        response = fact["response"]
        if response not in record.proved and response not in record.asked_whose:
            waiting.setdefault(fact["who"], []).append([response, fact["issue"], len(fact["items"])])
    order = sorted(waiting, key=lambda who: (ids.index(who) if who in ids else len(ids), who))
    names = {one["id"]: one["name"] for one in approvers}
    return [{"who": who, "name": names.get(who, who), "waiting": waiting[who]} for who in order]


def come_to(history):
    now, terms = history["now"], history["now"]["terms"]
    keys = [(one["room"], one["item"]) for one in now["by version"][-1]]
    approval = [issue for issue in history["issues"] if issue["for"] == "approval"]
    if not approval:
        items = [{"room": room, "item": item, "orderable": False, "told": {}} for room, item in keys]
        return {"items": items, "withdrawn": [], "unsigned": [], "odd": [], "held": [], "ahead": None}
    record, issue = Record(history), max(approval, key=lambda issue: issue["number"])
    newest = len(now["by version"])
    versions = [version(CONTENTS[item["mark"]]) for one in history["issues"] for item in one["items"][:1]]
    asked = version(CONTENTS[issue["items"][0]["mark"]]) if issue["items"] else newest
    why_held, items = held(record, issue, terms), []
    for at, of in enumerate(keys):
        item = Item([shown[at]["mark"] for shown in now["by version"]], asked, min(versions, default=newest))
        told = told_of_item(record, issue, item, of, terms, bool(why_held))
        items.append({"room": of[0], "item": of[1], "orderable": told["state"] == "approved", "told": told})
    _, at, on = record.issued[issue["number"]]
    ahead = [issue["number"], on, utc_day(at)] if days_between(utc_day(at), on) > 1 else None
    return {
        "items": items,
        "withdrawn": withdrawn(record, set(keys), terms["approvers"]),
        "unsigned": unsigned(record, terms["approvers"]),
        "odd": [[number, record.odd[number]] for number in sorted(record.odd)],
        "held": why_held,
        "ahead": ahead,
    }


def differences(one, other, path=""):
    if isinstance(one, dict) and isinstance(other, dict) and one.keys() == other.keys():
        return [line for key in one for line in differences(one[key], other[key], f"{path} / {key}")]
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return [line for at in range(len(one)) for line in differences(one[at], other[at], f"{path} / {at}")]
    return [] if one == other else [f"{path.lstrip(' /')}: the program says {one}, the model says {other}"]


def readable(history):
    """A history for people: a line of the ledger a line, digests by their first six digits."""
    yield f"history {history['history']}"
    short = lambda value: {
        key: digits[:6] if key in ("mark", "response") else digits for key, digits in value.items() if key not in ("is", "key")
    }
    for line in history["lines"]:
        fact = line["fact"]
        told = short({**fact, "items": [short(one) for one in fact["items"]]} if isinstance(fact.get("items"), list) else fact)
        yield f"  {line['line']:3} {line['at']} {fact['is']}: {canonical(told)}"
        for issue in history["issues"] if fact["is"] == "issued" else []:
            if issue["number"] == fact["number"]:
                shown = [f"{item['item']} {item['mark'][:6]} or {[mark[:6] for mark in item['also']]}" for item in issue["items"]]
                yield f"      it shows {', '.join(shown)}; terms {canonical(issue['terms'])}"
    for one in zip(*history["now"]["by version"]):
        marks = ", ".join(shown["mark"][:6] for shown in one)
        yield f"  now {one[0]['item']} is {marks} by version, chosen {CONTENTS[one[-1]['mark']].get('chosen')}"
    yield f"  now {canonical(history['now']['terms'])}"


def main():
    for mark, content in json.loads(sys.stdin.readline())["contents"].items():
        assert digest(content) == mark, content
        CONTENTS[mark] = content
    count, states = 0, Counter()
    for line in sys.stdin:
        history = json.loads(line)
        ours, theirs = come_to(history), history["came to"]
        if ours != theirs:
            print(*readable(history), *differences(theirs, ours), sep="\n")
            sys.exit(1)
        count += 1
        states.update(item["told"]["state"] for item in ours["items"] if item["told"])
    print(f"{count} histories come to the same; items by their state:")
    print(*(f"  {state}: {count}" for state, count in sorted(states.items())), sep="\n")


main()
