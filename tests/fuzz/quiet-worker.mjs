// A planning thread that waits: what comes of a run is looked at elsewhere, and here nothing may change by itself.
import { parentPort } from 'node:worker_threads';

parentPort.on('message', () => {});
