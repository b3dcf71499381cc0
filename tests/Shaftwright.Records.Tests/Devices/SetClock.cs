namespace Shaftwright.Records.Tests.Devices;

/// <summary>A clock that stands until it is moved.</summary>
internal sealed class SetClock : TimeProvider
{
    private DateTimeOffset _now = new(2026, 11, 25, 8, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => _now;

    public void Move(TimeSpan by) => _now += by;
}
