import { join } from 'node:path';
import { boot } from './boot.ts';

void boot(join(import.meta.dirname, '..'));
