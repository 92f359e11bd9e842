// Which operations of the contract answer at a path, and which of them do so without a session.
import { OPERATIONS, type Operation } from './contract.ts';

function pattern(path: string): RegExp {
  const source = path
    .split('/')
    .map((part) => part.replace(/[.]/g, '\\.').replace(/:[a-z]+/g, '[^/]+'))
    .join('/');
  return new RegExp(`^${source}$`);
}

const PLACES = OPERATIONS.map((operation) => ({ operation, at: pattern(operation.path) }));

/** The operations of a path, whatever their method. */
export function operationsAt(path: string): Operation[] {
  return PLACES.filter(({ at }) => at.test(path)).map(({ operation }) => operation);
}

/** Whether a method is that of an operation; HEAD is answered as GET is (RFC 9110 §9.3.2). */
export function isMethodOf(operation: Operation, method: string): boolean {
  const wanted = operation.method.toUpperCase();
  return method === wanted || (method === 'HEAD' && wanted === 'GET');
}

/**
 * Whether only somebody who is signed in gets an answer here. Everything of the contract and everything
 * under /api does, unless the contract itself says `open`: what is forgotten there is shut.
 */
export function needsSession(method: string, path: string): boolean {
  const operations = operationsAt(path);
  if (operations.some((one) => one.open === true && isMethodOf(one, method))) return false;
  return operations.length > 0 || path === '/api' || path.startsWith('/api/');
}
