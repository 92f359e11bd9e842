// Reads a password from a terminal without showing it, or from whatever is piped in.
import type { ReadStream } from 'node:tty';

const MOST_BYTES = 4096;

/** All that is piped in, up to a bound far above any password. */
export async function readAll(input: NodeJS.ReadStream): Promise<string> {
  let text = '';
  for await (const chunk of input.setEncoding('utf8')) {
    text += chunk;
    if (text.length > MOST_BYTES) break;
  }
  return text;
}

/** Asks at the terminal; what is typed is not shown. Ctrl-C ends the program. */
export function askHidden(question: string, input: ReadStream = process.stdin): Promise<string> {
  process.stderr.write(question);
  return new Promise((resolve) => {
    let typed = '';
    const done = () => {
      input.off('data', onData).setRawMode(false).pause();
      process.stderr.write('\n');
    };
    const onData = (data: Buffer) => {
      for (const mark of data.toString('utf8')) {
        if (mark === '\r' || mark === '\n') {
          done();
          resolve(typed);
          return;
        }
        if (mark === '\u0003') {
          done();
          process.exit(130);
        }
        if (mark === '\u007f' || mark === '\b') typed = [...typed].slice(0, -1).join('');
        else if (mark >= ' ') typed += mark;
      }
    };
    input.setRawMode(true).resume().on('data', onData);
  });
}
