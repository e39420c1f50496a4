"""Events of calendar files as Python's icalendar reads them: UID, start, end and title, tabs between,
a line each. Days are YYYYMMDD, times seconds since 1970 in UTC."""

import datetime
import sys

from icalendar import Calendar


def said(moment):
    if isinstance(moment, datetime.datetime):
        return str(int(moment.timestamp()))
    return moment.strftime("%Y%m%d")


for path in sys.argv[1:]:
    with open(path, "rb") as file:
        calendar = Calendar.from_ical(file.read())
    for event in calendar.walk("VEVENT"):
        if event.errors:
            sys.exit(f"{path}: {event['UID']}: {event.errors}")
        start = event["DTSTART"].dt
        end = event["DTEND"].dt if "DTEND" in event else start + event["DURATION"].dt
        print(event["UID"], said(start), said(end), event["SUMMARY"], sep="\t")
