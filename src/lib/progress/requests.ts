/** What a request to the browser's own database gives; rejects with the request's error. */
export const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.addEventListener('success', () => resolve(request.result));
    request.addEventListener('error', () => reject(request.error as Error));
  });

/** Comes when all of a transaction is written; rejects with what ended it before, where the browser says so. */
export const endOf = (transaction: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    transaction.addEventListener('complete', () => resolve());
    for (const type of ['error', 'abort'])
      transaction.addEventListener(type, () =>
        reject(transaction.error ?? new DOMException('the transaction was ended', 'AbortError')),
      );
  });
