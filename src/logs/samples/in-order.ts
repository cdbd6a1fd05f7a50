/**
 * Carries tasks out, several at once, and gives their replies in the order of the tasks. No more than `ahead` are begun
 * before the first of them has been taken: a slow reader holds the work up, and memory stays bounded.
 */
export async function* inOrder<Task, Reply>(
  tasks: Iterable<Task>,
  carryOut: (task: Task) => Promise<Reply>,
  ahead: number,
): AsyncGenerator<Reply> {
  const begun: Promise<Reply>[] = [];
  for (const task of tasks) {
    const reply = carryOut(task);
    // Heard when its turn comes; until then it is no unhandled rejection.
    reply.catch(() => {});
    begun.push(reply);
    if (begun.length >= ahead) yield begun.shift()!;
  }
  for (const reply of begun) yield reply;
}
