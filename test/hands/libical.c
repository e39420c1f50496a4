/* Events of calendar files as libical reads them: UID, start, end and title, tabs between, a line each.
   Days are YYYYMMDD, times seconds since 1970 in UTC. */
#include <libical/ical.h>
#include <stdio.h>
#include <stdlib.h>

static char *next_line(char *buffer, size_t size, void *file) { return fgets(buffer, (int)size, file); }

static void print_time(icaltimetype time) {
  if (time.is_date)
    printf("\t%04d%02d%02d", time.year, time.month, time.day);
  else
    printf("\t%lld", (long long)icaltime_as_timet_with_zone(time, time.zone));
}

int main(int count, char **paths) {
  for (int i = 1; i < count; i++) {
    FILE *file = fopen(paths[i], "r");
    if (file == NULL) return perror(paths[i]), 1;
    icalparser *parser = icalparser_new();
    icalparser_set_gen_data(parser, file);
    icalcomponent *calendar = icalparser_parse(parser, next_line);
    if (calendar == NULL || icalcomponent_count_errors(calendar) > 0) {
      fprintf(stderr, "%s: %s\n", paths[i], calendar == NULL ? "no calendar" : icalcomponent_as_ical_string(calendar));
      return 1;
    }
    if (!icalrestriction_check(calendar)) {
      fprintf(stderr, "%s: %s\n", paths[i], icalcomponent_as_ical_string(calendar));
      return 1;
    }
    icalcomponent *event = icalcomponent_get_first_component(calendar, ICAL_VEVENT_COMPONENT);
    for (; event; event = icalcomponent_get_next_component(calendar, ICAL_VEVENT_COMPONENT)) {
      printf("%s", icalcomponent_get_uid(event));
      print_time(icalcomponent_get_dtstart(event));
      print_time(icalcomponent_get_dtend(event));
      printf("\t%s\n", icalcomponent_get_summary(event));
    }
    icalcomponent_free(calendar);
    icalparser_free(parser);
    fclose(file);
  }
  return 0;
}
