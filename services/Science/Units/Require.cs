using System.Globalization;
using System.Numerics;

namespace LabPipeline.Science.Units;

/// <summary>Refuses numbers no result may be made from. Messages say what was found and what was expected.</summary>
internal static class Require
{
    public static T Positive<T>(T value, string what)
        where T : struct, INumber<T> =>
        T.IsFinite(value) && value > T.Zero ? value : throw Out(value, what, "a finite number above zero");

    public static T NotNegative<T>(T value, string what)
        where T : struct, INumber<T> =>
        T.IsFinite(value) && value >= T.Zero ? value : throw Out(value, what, "a finite number of zero or more");

    public static double Finite(double value, string what) =>
        double.IsFinite(value) ? value : throw Out(value, what, "a finite number");

    public static T Between<T>(T value, T lowest, T highest, string what)
        where T : struct, INumber<T> =>
        T.IsFinite(value) && value >= lowest && value <= highest
            ? value
            : throw Out(value, what, string.Create(CultureInfo.InvariantCulture, $"a number from {lowest} to {highest}"));

    public static double Probability(double value, string what) =>
        value > 0 && value < 1 ? value : throw Out(value, what, "a probability strictly between 0 and 1");

    public static ArgumentOutOfRangeException Out<T>(T value, string what, string expected)
        where T : IFormattable =>
        new(what, string.Create(CultureInfo.InvariantCulture, $"Found {value} for {what}, expected {expected}."));
}
