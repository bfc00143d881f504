package org.stockcutting.io;

import java.util.Currency;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;

/** Reads ISO 4217 currency codes. */
final class Currencies {

    private static final Currency IMPERIAL = Currency.getInstance("USD");
    private static final Currency METRIC = Currency.getInstance("EUR");

    private Currencies() {}

    /** The job's currency; without one US dollars in inches and feet, else euros. */
    static Currency ofJob(DocObject doc, Reading reading) {
        Currency standard = reading.unit().isImperial() ? IMPERIAL : METRIC;
        if (!doc.has("currency")) {
            reading.filledIn(doc.pointer("currency"), standard.getCurrencyCode());
        }
        return Or.of(read(doc, reading), standard);
    }

    /** The currency in the field {@code currency}, or null if it is absent or faulty. */
    static @Nullable Currency read(DocObject doc, Reading reading) {
        String code = doc.text("currency");
        if (code == null) {
            return null;
        }
        Currency currency = known(code);
        if (currency == null) {
            reading.faults()
                    .add(
                            doc.pointer("currency"),
                            FaultCode.UNKNOWN_CURRENCY,
                            code,
                            "an ISO 4217 code such as USD or EUR",
                            "\"" + Faults.shown(code) + "\" is no ISO 4217 code; write USD, EUR and the like.");
        }
        return currency;
    }

    private static @Nullable Currency known(String code) {
        try {
            Currency currency = Currency.getInstance(code);
            return currency.getDefaultFractionDigits() < 0 ? null : currency;
        } catch (IllegalArgumentException e) {
            return null;
        }
    }
}
