package spotline.report.print;

/** Path data of SVG as path operators of PDF. Source: W3C, Scalable Vector Graphics 1.1, 8.3; ISO 32000-1, 8.5.2. */
final class SvgPath {
    private final String data;
    private int at;
    private int from;

    private SvgPath(String data) {
        this.data = data;
    }

    static void add(PdfOperators out, String data) {
        new SvgPath(data).run(out);
    }

    private void run(PdfOperators out) {
        char command = ' ';
        double x = 0;
        double y = 0;
        while (skip()) {
            char c = data.charAt(at);
            if (Character.isLetter(c)) {
                command = c;
                at++;
            }
            switch (command) {
                case 'M', 'L' -> {
                    // Most of every figure: the numbers are copied as they stand.
                    next();
                    out.add(data, from, at);
                    int lastX = from;
                    int endX = at;
                    next();
                    out.add(data, from, at).end(command == 'M' ? "m" : "l");
                    if (quadraticFollows()) {
                        x = Double.parseDouble(data.substring(lastX, endX));
                        y = Double.parseDouble(data.substring(from, at));
                    }
                    command = 'L';
                }
                case 'Q' -> {
                    double cx = number();
                    double cy = number();
                    double endX = number();
                    double endY = number();
                    // A quadratic curve as the cubic one that it is.
                    out.add(x + 2 * (cx - x) / 3).add(y + 2 * (cy - y) / 3);
                    out.add(endX + 2 * (cx - endX) / 3).add(endY + 2 * (cy - endY) / 3);
                    out.add(endX).add(endY).end("c");
                    x = endX;
                    y = endY;
                }
                case 'C' -> {
                    for (int i = 0; i < 4; i++) out.add(number());
                    x = number();
                    y = number();
                    out.add(x).add(y).end("c");
                }
                case 'Z', 'z' -> out.end("h");
                default -> throw new IllegalStateException("a figure's path holds the command " + command);
            }
        }
    }

    private boolean quadraticFollows() {
        int ahead = at;
        while (ahead < data.length() && data.charAt(ahead) == ' ') ahead++;
        return ahead < data.length() && data.charAt(ahead) == 'Q';
    }

    /** Over blanks and commas; false at the end. */
    private boolean skip() {
        while (at < data.length() && (data.charAt(at) <= ' ' || data.charAt(at) == ',')) at++;
        return at < data.length();
    }

    private double number() {
        next();
        return Double.parseDouble(data.substring(from, at));
    }

    /** The next number stands from {@code from} to {@code at}. Numbers of our figures have no exponent. */
    private void next() {
        skip();
        from = at;
        while (at < data.length()) {
            char c = data.charAt(at);
            boolean part = c >= '0' && c <= '9' || c == '.' || (c == '-' && at == from);
            if (!part) break;
            at++;
        }
    }
}
