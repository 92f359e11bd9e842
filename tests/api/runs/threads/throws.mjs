// A planning thread that breaks off with an error.
throw new Error('out of wort');
