package spotline.run;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Remembers a number of results; the ones unused for longest are forgotten first. May be used from any thread: two that ask
 * for the same at once may both compute it.
 */
public final class BoundedMemo implements Memo {
    private final Map<Key, Object> results;

    /** @param capacity results kept, 1 or more */
    public BoundedMemo(int capacity) {
        if (capacity < 1) throw new IllegalArgumentException("capacity must be 1 or more, was " + capacity);
        this.results = new LinkedHashMap<>(64, 0.75f, true) {
            private static final long serialVersionUID = 1;

            @Override
            protected boolean removeEldestEntry(Map.Entry<Key, Object> eldest) {
                return size() > capacity;
            }
        };
    }

    @Override
    @SuppressWarnings("unchecked") // A key names its step, and a step has one type of result.
    public <T> T of(Key key, Supplier<T> step) {
        synchronized (results) {
            Object known = results.get(key);
            if (known != null) return (T) known;
        }
        T made = step.get();
        synchronized (results) {
            results.put(key, made);
        }
        return made;
    }

    /** Results kept now. */
    public int size() {
        synchronized (results) {
            return results.size();
        }
    }
}
