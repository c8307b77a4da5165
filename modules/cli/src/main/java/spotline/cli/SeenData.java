package spotline.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import spotline.formats.Block;
import spotline.formats.DataDigest;
import spotline.formats.SpectrumFile;

/** Remembers the numbers of every block met, so that the same data under another name is told. */
final class SeenData {
    /** A block, or the columns of a text file, with the same numbers as an earlier one. */
    record Twin(String where, String earlier) {
        String sentence() {
            return where + " holds the same data as " + earlier;
        }
    }

    private final Map<String, String> places = new HashMap<>();

    List<Twin> twins(SpectrumFile file) {
        List<Twin> twins = new ArrayList<>();
        for (Block block : file.blocks()) {
            add(twins, DataDigest.of(block.set()), file.name() + ", block " + block.number());
        }
        return twins;
    }

    List<Twin> twins(String name, String digestOfColumns) {
        List<Twin> twins = new ArrayList<>();
        add(twins, digestOfColumns, name);
        return twins;
    }

    private void add(List<Twin> twins, String digest, String where) {
        String earlier = places.putIfAbsent(digest, where);
        if (earlier != null) twins.add(new Twin(where, earlier));
    }
}
