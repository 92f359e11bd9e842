# Reads calendars with python3-icalendar and prints what it found as JSON; any complaint of the parser is printed and is an error.
import json
import sys

from icalendar import Calendar

found = []
for path in sys.argv[1:]:
    with open(path, "rb") as file:
        calendar = Calendar.from_ical(file.read())
    events = []
    for part in calendar.walk():
        # The library keeps what it could not read beside the component instead of raising.
        if getattr(part, "errors", []):
            sys.exit(f"{path}: {part.name}: {part.errors}")
        if part.name != "VEVENT":
            continue
        start, end = part["DTSTART"].dt, part["DTEND"].dt
        events.append(
            {
                "uid": str(part["UID"]),
                "summary": str(part["SUMMARY"]),
                "description": str(part["DESCRIPTION"]),
                "start": start.isoformat().replace("+00:00", "Z"),
                "end": end.isoformat().replace("+00:00", "Z"),
                "sequence": int(part["SEQUENCE"]),
                "alarms": len([one for one in part.subcomponents if one.name == "VALARM"]),
            }
        )
    found.append(events)
json.dump(found, sys.stdout)
