"""Moments of wall-clock times by the system's table of zones. Each argument is a zone and a local time,
`Europe/Berlin 2024-03-31T02:30`; each line the seconds since 1970 in UTC. Of a time that comes twice it
is the first, of one that is left out the one by the offset before the gap (PEP 495, fold 0), as
RFC 5545 section 3.3.5 wants it too."""

import datetime
import sys
import zoneinfo

for argument in sys.argv[1:]:
    zone, local = argument.split(" ")
    wall = datetime.datetime.fromisoformat(local)
    print(int(wall.replace(tzinfo=zoneinfo.ZoneInfo(zone)).timestamp()))
