import { defineConfig } from "vitest/config";

import whole from "../vitest.config.js";
import { mutatedRooms } from "./rooms.js";

// The tests beside the rooms that are changed, and of whole plans and seasons; no integer programs and no
// trying of all choices, since thousands of changes meet each of these.
export default defineConfig({
  test: {
    ...whole.test,
    include: [
      `test/{${mutatedRooms.join(",")},-}/**/*.test.ts`,
      "test/{plan,live/*,cli/plan-command,cli/batch-command}.test.ts",
    ],
    exclude: [
      "test/days/choose-days-{highs,brute,many}.test.ts",
      "test/live/{no-edit,many-gardens,at-once,file-rights}.test.ts",
      // It sets the machine's time zone, which a thread can't.
      "test/calendar/ical-generator-traps.test.ts",
    ],
    reporters: ["default"],
  },
});
