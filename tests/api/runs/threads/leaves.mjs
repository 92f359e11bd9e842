// A planning thread that ends without a word.
process.exit(3);
