package org.stockcutting.bench.quality;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.bench.instances.Known;

/** Rows made by hand. */
final class Rows {

    private Rows() {}

    static Row row(String file, @Nullable Integer found, @Nullable Integer bound, String status) {
        return row(file, found, bound, null, Known.NOTHING, status);
    }

    static Row row(
            String file,
            @Nullable Integer found,
            @Nullable Integer bound,
            @Nullable Integer searched,
            Known known,
            String status) {
        return new Row(
                file,
                "set",
                "boards",
                7,
                whole(found),
                whole(bound),
                whole(searched),
                known,
                status,
                "work-limit",
                0,
                1.25,
                1000,
                "1000 steps",
                1,
                0.875,
                Shares.NONE,
                List.of(new StockUse("white oak", new BigDecimal("2438.4"), 3, new BigDecimal("0.8800"))),
                "");
    }

    static Known known(@Nullable Integer bound, int best, boolean reachable) {
        return new Known(whole(bound), BigInteger.valueOf(best), reachable);
    }

    private static @Nullable BigInteger whole(@Nullable Integer value) {
        return value == null ? null : BigInteger.valueOf(value);
    }
}
