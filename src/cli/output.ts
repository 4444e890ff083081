/** Ends the program quietly when whoever reads what it prints has read enough (`| head`). */
export function endWithReader(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
}
