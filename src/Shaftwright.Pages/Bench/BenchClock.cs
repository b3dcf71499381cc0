using Microsoft.JSInterop;

namespace Shaftwright.Pages.Bench;

/// <summary>The beat that clocks on the screen are redrawn by. It counts nothing: what a clock shows is worked out from the
/// instant it began, kept on the device, and the wall clock. So it is right after a sleep, a restart, or on another device.</summary>
public sealed class BenchClock(IJSRuntime js, TimeProvider clock) : IDisposable
{
    private IJSObjectReference? _module;
    private DotNetObjectReference<BenchClock>? _self;
    private Action? _beaten;
    private bool _sounds;

    /// <summary>Now, by the wall clock of this device, with its offset.</summary>
    public DateTimeOffset Now => clock.GetLocalNow();

    /// <summary>How far the wall clock last went in one step while a clock was in sight; null when it never did. Negative when it
    /// was set back. Forward it may also have slept.</summary>
    public TimeSpan? Jumped { get; private set; }

    /// <summary>True when it can be heard: a browser allows sound only after a touch.</summary>
    public bool Sounds => _sounds;

    /// <summary>Raised about twice a second while somebody listens, and at once when the page comes back.</summary>
    public event Action? Beaten
    {
        add
        {
            var first = _beaten is null;
            _beaten += value;
            if (first)
                _ = Beats(true);
        }
        remove
        {
            _beaten -= value;
            if (_beaten is null)
                _ = Beats(false);
        }
    }

    /// <summary>Loads what it needs, before the network may go.</summary>
    public async Task Open()
    {
        _module = await js.InvokeAsync<IJSObjectReference>("import", "./bench.js");
        _self = DotNetObjectReference.Create(this);
        await _module.InvokeVoidAsync("clocks", _self);
    }

    /// <summary>A beat.</summary>
    /// <param name="jump">How far the wall clock went against one that cannot be set, ms; 0 for nothing worth saying.</param>
    [JSInvokable]
    public async Task Beat(double jump)
    {
        if (jump != 0)
            Jumped = TimeSpan.FromMilliseconds(jump);
        _sounds = _module is not null && await _module.InvokeAsync<bool>("sounds");
        _beaten?.Invoke();
    }

    /// <summary>Sounds and shakes until the screen is touched; for one key once only.</summary>
    public async Task Ring(string key)
    {
        if (_module is not null)
            await _module.InvokeVoidAsync("ring", key);
    }

    /// <summary>Forgets that the wall clock jumped: somebody has read it.</summary>
    public void Heed() => Jumped = null;

    /// <inheritdoc/>
    public void Dispose() => _self?.Dispose();

    private async Task Beats(bool on)
    {
        if (_module is not null)
            await _module.InvokeVoidAsync("beats", on);
    }
}
