"""Reads the calendar file that the program writes: Python's icalendar, and dateutil for every date of its rules."""

import pathlib
from datetime import datetime

from dateutil.rrule import rrulestr
from icalendar import Calendar

from table import fixture

FILE = pathlib.Path(__file__).resolve().parent / "fixtures" / "calendar_file.ics"
# Fifteen years after the invented installation.
UNTIL = datetime(2041, 8, 31)


def compute():
    calendar = Calendar.from_ical(FILE.read_bytes())
    assert not calendar.errors, calendar.errors
    events = []
    for event in calendar.walk("VEVENT"):
        assert not event.errors, event.errors
        first = datetime.combine(event.decoded("DTSTART"), datetime.min.time())
        dates = [first]
        if "RRULE" in event:
            rule = rrulestr(event["RRULE"].to_ical().decode(), dtstart=first)
            dates = [d for d in rule if d <= UNTIL]
        events.append({"uid": str(event["UID"]), "summary": str(event["SUMMARY"]),
                       "dates": [d.date().isoformat() for d in dates if d <= UNTIL]})
    return fixture(["icalendar", "python-dateutil"], "The events of calendar_file.ics, and every date of each up to "
                   "2041-08-31", events=events)
