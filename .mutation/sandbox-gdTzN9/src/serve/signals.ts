/**
 * Stops once on SIGTERM or SIGINT and fulfils when all has ended. A second signal ends the program at
 * once, as it does without this.
 */
// @ts-nocheck

export function stopOnSignals(stop: () => Promise<void>): Promise<NodeJS.Signals> {
  const signals: NodeJS.Signals[] = ["SIGTERM", "SIGINT"];
  return new Promise((resolve, reject) => {
    const onSignal = (signal: NodeJS.Signals): void => {
      for (const one of signals) process.removeListener(one, onSignal);
      stop().then(() => {
        resolve(signal);
      }, reject);
    };
    for (const one of signals) process.on(one, onSignal);
  });
}
