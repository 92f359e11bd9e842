// A planning thread that says how far it is, over and over, and never ends or listens.
import { parentPort } from 'node:worker_threads';

setInterval(() => {
  parentPort.postMessage({
    type: 'progress',
    progress: { stepsDone: 1, steps: 2, hard: 0, leftOut: 0, costMinor: 3 },
  });
}, 5);
