/** A process of its own to be measured: Node's own server with no work to do, its answer made before. */
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";

export interface BareAnswer {
  readonly status: number;
  /** Name, value, name, value. */
  readonly headers: readonly string[];
  readonly bodyBase64: string;
}

let status = 500;
let headers: string[] = [];
let body: Buffer | undefined;
const server = createServer((_, response) => {
  response.writeHead(status, headers);
  response.end(body);
});
server.listen(0, "127.0.0.1", () => {
  process.send?.({ port: (server.address() as AddressInfo).port });
});

process.on("message", (asked: BareAnswer | "cpu") => {
  if (asked !== "cpu") {
    ({ status } = asked);
    headers = [...asked.headers];
    const bytes = Buffer.from(asked.bodyBase64, "base64");
    body = bytes.length > 0 ? bytes : undefined;
  }
  process.send?.(process.cpuUsage());
});
