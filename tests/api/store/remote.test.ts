// A database behind a URL: the URL and its token are used, and where it does not answer a sentence says so and keeps the token.
//
// There is no libSQL server here: what stands in its place only notes what it is asked and refuses.
import { createServer, type IncomingHttpHeaders, type Server } from 'node:http';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openStore, StoreError } from '../../../api/store/index.ts';

const TOKEN = 'eyJhbGciOiJFZERTQSJ9.c2VjcmV0.aGlkZGVu';

let server: Server;
let port = 0;
let status = 401;
let asked: { url: string; headers: IncomingHttpHeaders }[] = [];

beforeEach(async () => {
  asked = [];
  status = 401;
  server = createServer((request, answer) => {
    asked.push({ url: request.url ?? '', headers: request.headers });
    answer.writeHead(status).end(`no, not with ${request.headers.authorization ?? 'nothing'}`);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  port = typeof address === 'object' ? (address?.port ?? 0) : 0;
});
afterEach(() => server.close());

async function sentence(url: string, authToken?: string): Promise<string> {
  const opening = openStore({ url, ...(authToken === undefined ? {} : { authToken }) });
  const error = await opening.then(
    (store) => store.close(),
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(StoreError);
  return error instanceof StoreError ? error.message : '';
}

test('nobody there: a sentence that names the server, why, and the two variables', async () => {
  server.close();
  const said = await sentence(`http://127.0.0.1:${port}`, TOKEN);
  expect(said).toContain(`http://127.0.0.1:${port}`);
  expect(said).toContain('ECONNREFUSED');
  expect(said).toMatch(/BARMLINE_DB\b.*BARMLINE_DB_TOKEN.*nothing was changed/);
  expect(said).not.toContain('folder');
});

test('the server is asked over HTTP, with the token as a bearer and nowhere in the address', async () => {
  await sentence(`http://127.0.0.1:${port}`, TOKEN);
  const withToken = asked.filter(({ headers }) => headers.authorization === `Bearer ${TOKEN}`);
  expect(withToken.length).toBeGreaterThan(0);
  expect(asked.every(({ url }) => !url.includes(TOKEN))).toBe(true);
});

test.each([401, 404, 500])('an answer of %i is said as such', async (given) => {
  status = given;
  expect(await sentence(`http://127.0.0.1:${port}`, TOKEN)).toContain(`it answers with ${given}`);
});

test.each([
  ['in its own variable', (base: string) => [base, TOKEN]],
  ['in the URL', (base: string) => [`${base}/?authToken=${TOKEN}`]],
  ['as a password in the URL', (base: string) => [base.replace('//', `//brewer:${TOKEN}@`)]],
])('the token is not said, given %s, even where the server says it back', async (_, given) => {
  const [url = '', token] = given(`http://127.0.0.1:${port}`);
  expect(await sentence(url, token)).not.toContain(TOKEN);
  server.close();
  server.closeAllConnections();
  expect(await sentence(url, token)).not.toContain(TOKEN);
});
