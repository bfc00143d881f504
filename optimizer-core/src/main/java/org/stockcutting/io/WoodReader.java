package org.stockcutting.io;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.WoodModel;
import org.stockcutting.job.WoodRules;

/** Reads the object {@code wood}. */
final class WoodReader {

    private static final Pattern SHARE = Pattern.compile("[0-9]{1,3}(\\.[0-9]{1,9})?");

    private WoodReader() {}

    static WoodRules read(DocObject doc, String jobMaterial) {
        if (!doc.has("wood")) {
            return WoodRules.defaults();
        }
        DocObject wood = doc.objectOrEmpty("wood");
        return new WoodRules(
                Or.of(share(wood, "confidence"), WoodRules.USUAL_CONFIDENCE),
                Or.of(wood.integer("trials"), WoodRules.USUAL_TRIALS),
                models(wood, jobMaterial));
    }

    private static List<WoodModel> models(DocObject wood, String jobMaterial) {
        List<WoodModel> models = new ArrayList<>();
        for (DocObject model : wood.objects("models")) {
            models.add(
                    model == null
                            ? new WoodModel(Or.NAME, null, null, null, null, null, null, null)
                            : new WoodModel(
                                    Or.of(model.text("material"), jobMaterial),
                                    model.text("grade"),
                                    model.length("clearRun"),
                                    model.length("zone"),
                                    model.length("endCheck"),
                                    share(model, "unusableBoards"),
                                    share(model, "tightKnots"),
                                    share(model, "blemishes")));
        }
        return models;
    }

    /** A number stands for itself, as in lengths and amounts. */
    private static @Nullable BigDecimal share(DocObject doc, String name) {
        return doc.parsedNumber(
                name, FaultCode.WRONG_TYPE, text -> SHARE.matcher(text).matches() ? new BigDecimal(text) : null);
    }
}
