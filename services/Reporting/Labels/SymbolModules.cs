using LabPipeline.Science.Barcodes;
using ZXing;
using ZXing.Datamatrix;

namespace LabPipeline.Reporting.Labels;

/// <summary>The dark squares of a symbol, quiet zone left out; a bar code is a single row.</summary>
internal sealed class SymbolModules
{
    private static readonly Dictionary<EncodeHintType, object> Square = new()
    {
        [EncodeHintType.DATA_MATRIX_SHAPE] = ZXing.Datamatrix.Encoder.SymbolShapeHint.FORCE_SQUARE,
        [EncodeHintType.MARGIN] = 0,
    };

    private readonly bool[][] _rows;

    private SymbolModules(bool[][] rows, int quiet)
    {
        _rows = rows;
        Quiet = quiet;
    }

    public int Width => _rows[0].Length;

    public int Height => _rows.Length;

    /// <summary>Modules that must stay empty on each side: 10 for Code 128 (ISO/IEC 15417), 1 for Data Matrix (ISO/IEC 16022); both from memory.</summary>
    public int Quiet { get; }

    public static SymbolModules Of(string text, LabelSymbol symbol) => symbol == LabelSymbol.Code128 ? Bars(text) : Matrix(text);

    /// <summary>Runs of dark modules, so that a bar is one box and no seam runs through it.</summary>
    public IEnumerable<(int Row, int First, int Count)> Runs()
    {
        for (var row = 0; row < Height; row++)
        {
            for (var first = 0; first < Width;)
            {
                var count = _rows[row].Skip(first).TakeWhile(dark => dark).Count();
                if (count > 0)
                {
                    yield return (row, first, count);
                }

                first += count + 1;
            }
        }
    }

    private static SymbolModules Bars(string text) => new([[.. Code128.Encode(text).Modules.Select(module => module == '1')]], 10);

    private static SymbolModules Matrix(string text)
    {
        var matrix = new DataMatrixWriter().encode(text, BarcodeFormat.DATA_MATRIX, 0, 0, Square);
        return new SymbolModules(
            [.. Enumerable.Range(0, matrix.Height).Select(row => Enumerable.Range(0, matrix.Width).Select(column => matrix[column, row]).ToArray())], 1);
    }
}
