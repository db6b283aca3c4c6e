import { useOnce } from './library/use-once.ts';

/** Keeps something new and shows it, once however often that is pressed. */
export function useKept(show: (id: string) => void) {
  const { once } = useOnce();
  return (keep: () => Promise<string | null>) =>
    once(async () => {
      const id = await keep();
      if (id !== null) show(id);
    });
}
