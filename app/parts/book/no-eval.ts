// The schemas are not to probe for eval: the page's security policy forbids it and would report the attempt.
import { config } from 'zod';

config({ jitless: true });
