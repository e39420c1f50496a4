/** Node's own server with no work to do: its answer was made before. */
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

export function answerThis(answer: BareAnswer): void {
  ({ status } = answer);
  headers = [...answer.headers];
  const bytes = Buffer.from(answer.bodyBase64, "base64");
  body = bytes.length > 0 ? bytes : undefined;
}

/** Gives its port. */
export function bareServer(): Promise<number> {
  const server = createServer((_, response) => {
    response.writeHead(status, headers);
    response.end(body);
  });
  return new Promise((resolve) =>
    server.listen(0, "127.0.0.1", () => {
      resolve((server.address() as AddressInfo).port);
    }),
  );
}
