using Shaftwright.Measures;

namespace Shaftwright.Pages;

/// <summary>What the reader chose, kept on the device: the units.</summary>
public sealed class Preferences(DeviceStore device)
{
    private const string UnitsKey = "units";
    private const string ByKey = "by";

    /// <summary>Who signed last on this device; empty at first.</summary>
    public string By { get; private set; } = "";

    /// <summary>The units numbers are shown in, and a bare number is taken in.</summary>
    public Display Display { get; private set; }

    /// <summary>Raised when they change.</summary>
    public event Action? Changed;

    /// <summary>Reads them from the device.</summary>
    public async Task Load()
    {
        var kept = await device.Settings();
        By = kept.GetValueOrDefault(ByKey, "");
        Display = kept.GetValueOrDefault(UnitsKey) == "inch" ? Display.Inch : Display.Metric;
    }

    /// <summary>Remembers who signs.</summary>
    public async Task SignAs(string by)
    {
        By = by;
        await device.Set(ByKey, by);
    }

    /// <summary>Changes the units.</summary>
    public async Task Show(Display display)
    {
        Display = display;
        Changed?.Invoke();
        await device.Set(UnitsKey, display == Display.Inch ? "inch" : "metric");
    }

    /// <summary>The unit of a bare number in these units.</summary>
    /// <param name="fine">True for what is read in hundredths of a millimetre, or thou: shims, dial readings.</param>
    public Unit Bare<T>(bool fine = false)
        where T : IDimension<T>
    {
        if (typeof(T) == typeof(Distance) && Display == Display.Inch)
            return fine ? Distance.Thou : Distance.Inch;
        if (typeof(T) == typeof(Torque) && Display == Display.Inch)
            return Torque.PoundFoot;
        if (typeof(T) == typeof(Temperature) && Display == Display.Inch)
            return Temperature.Fahrenheit;
        return T.Units[0];
    }
}
