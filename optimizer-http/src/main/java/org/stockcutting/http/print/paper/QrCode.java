package org.stockcutting.http.print.paper;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Map;

/** A short text as a QR code (ISO/IEC 18004), error correction level M: a label gets dusty. */
final class QrCode {

    /** The quiet zone that the standard asks for, in modules. */
    private static final int QUIET = 4;

    private QrCode() {}

    /** Draws the code in a square, quiet zone included; black runs of a row are drawn as one. */
    static void draw(String text, PdfSheet sheet, double x, double top, double side) {
        BitMatrix matrix = matrix(text);
        double module = side / matrix.getWidth();
        for (int row = 0; row < matrix.getHeight(); row++) {
            int column = 0;
            while (column < matrix.getWidth()) {
                int from = column;
                while (column < matrix.getWidth() && matrix.get(column, row)) {
                    column++;
                }
                if (column > from) {
                    sheet.fill(x + from * module, top + row * module, (column - from) * module, module, 0);
                }
                column++;
            }
        }
    }

    private static BitMatrix matrix(String text) {
        Map<EncodeHintType, Object> hints = new EnumMap<>(EncodeHintType.class);
        hints.put(EncodeHintType.ERROR_CORRECTION, ErrorCorrectionLevel.M);
        hints.put(EncodeHintType.MARGIN, QUIET);
        if (!StandardCharsets.US_ASCII.newEncoder().canEncode(text)) {
            hints.put(EncodeHintType.CHARACTER_SET, StandardCharsets.UTF_8.name());
        }
        try {
            return new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0, hints);
        } catch (WriterException e) {
            throw new IllegalStateException("a text of " + text.length() + " characters is too long for a QR code", e);
        }
    }
}
