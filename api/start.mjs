// Starts Barmline from a bare clone: `node api/start.mjs` the server, `node api/start.mjs plan …` the command line.
//
// The first lines have to run on any Node there is, so that an old one gets a sentence and not a
// syntax error: everything newer is imported after the version has been looked at.

const [major, minor] = process.versions.node.split('.').map(Number);
const newEnough = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major >= 23;

if (!newEnough) {
  process.stderr.write(
    `Barmline needs Node.js 20.19 or newer (22.12 or newer in the 22 line); this is Node.js ${process.versions.node}.\n` +
      'Install a current Node.js from https://nodejs.org and start again.\n',
  );
  process.exitCode = 1;
} else {
  import('./launch.mjs').then(({ launch }) => launch(process.argv.slice(2)));
}
