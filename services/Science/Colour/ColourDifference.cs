using LabPipeline.Science.Units;

namespace LabPipeline.Science.Colour;

/// <summary>Differences between two CIELAB colours under one condition.</summary>
public static class ColourDifference
{
    private const double TwentyFiveToTheSeventh = 6103515625;

    // Hues exactly opposite come out of atan2 a rounding error either side of 180° and would pick the other mean hue, 1 % of the difference away.
    private const double HueEdge = 180 + 1e-10;

    /// <summary>dE*ab = sqrt(dL*² + da*² + db*²). Source: ISO/CIE 11664-4.</summary>
    /// <exception cref="ArgumentException">The conditions differ.</exception>
    public static double DeltaEab(Cielab reference, Cielab sample)
    {
        RequireSame(reference, sample);
        return double.Hypot(double.Hypot(sample.L - reference.L, sample.A - reference.A), sample.B - reference.B);
    }

    /// <summary>CIEDE2000, dE00. Meant for differences below about 5; beyond, it ranks but does not measure. Symmetric.</summary>
    /// <remarks>Source: ISO/CIE 11664-6; Sharma, Wu and Dalal 2005, Color Research and Application 30:21-30.</remarks>
    /// <param name="reference">One colour.</param>
    /// <param name="sample">The other.</param>
    /// <param name="kl">Parametric factor for lightness, 1 unless the method states another.</param>
    /// <param name="kc">Parametric factor for chroma.</param>
    /// <param name="kh">Parametric factor for hue.</param>
    /// <exception cref="ArgumentException">The conditions differ, or a factor is not above zero.</exception>
    public static double DeltaE00(Cielab reference, Cielab sample, double kl = 1, double kc = 1, double kh = 1)
    {
        RequireSame(reference, sample);
        var meanChroma = (reference.Chroma + sample.Chroma) / 2;
        var stretch = 1.5 - (0.5 * Saturation(meanChroma));
        var (first, second) = (Polar(reference, stretch), Polar(sample, stretch));
        var (hueShift, meanHue) = Hues(first, second);

        var lightness = (reference.L + sample.L) / 2;
        var chroma = (first.Chroma + second.Chroma) / 2;
        var (sl, sc, sh) = (LightnessWeight(lightness), 1 + (0.045 * chroma), 1 + (0.015 * chroma * HueWeight(meanHue)));
        var dl = (sample.L - reference.L) / (Require.Positive(kl, nameof(kl)) * sl);
        var dc = (second.Chroma - first.Chroma) / (Require.Positive(kc, nameof(kc)) * sc);
        var dh = 2 * Math.Sqrt(first.Chroma * second.Chroma) * SinDegrees(hueShift / 2) / (Require.Positive(kh, nameof(kh)) * sh);
        return Math.Sqrt((dl * dl) + (dc * dc) + (dh * dh) + (Rotation(meanHue, chroma) * dc * dh));
    }

    private static (double Chroma, double Hue) Polar(Cielab colour, double stretch)
    {
        var a = colour.A * stretch;
        return (double.Hypot(a, colour.B), Cielab.HueOf(a, colour.B));
    }

    private static (double Shift, double Mean) Hues((double Chroma, double Hue) first, (double Chroma, double Hue) second)
    {
        if (first.Chroma * second.Chroma == 0)
        {
            return (0, first.Hue + second.Hue);
        }

        var (shift, sum) = (second.Hue - first.Hue, first.Hue + second.Hue);
        if (Math.Abs(shift) <= HueEdge)
        {
            return (shift, sum / 2);
        }

        return (shift > 0 ? shift - 360 : shift + 360, (sum < 360 ? sum + 360 : sum - 360) / 2);
    }

    private static double Rotation(double meanHue, double chroma)
    {
        var bend = (meanHue - 275) / 25;
        return -SinDegrees(60 * Math.Exp(-bend * bend)) * 2 * Saturation(chroma);
    }

    private static double LightnessWeight(double lightness)
    {
        var square = (lightness - 50) * (lightness - 50);
        return 1 + (0.015 * square / Math.Sqrt(20 + square));
    }

    private static double HueWeight(double hue) =>
        1 - (0.17 * CosDegrees(hue - 30)) + (0.24 * CosDegrees(2 * hue)) + (0.32 * CosDegrees((3 * hue) + 6)) - (0.20 * CosDegrees((4 * hue) - 63));

    private static double Saturation(double chroma)
    {
        var seventh = Math.Pow(chroma, 7);
        return Math.Sqrt(seventh / (seventh + TwentyFiveToTheSeventh));
    }

    private static double SinDegrees(double degrees) => Math.Sin(degrees * Math.PI / 180);

    private static double CosDegrees(double degrees) => Math.Cos(degrees * Math.PI / 180);

    private static void RequireSame(Cielab reference, Cielab sample)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(sample);
        ViewingCondition.RequireSame(reference.Condition, sample.Condition);
    }
}
