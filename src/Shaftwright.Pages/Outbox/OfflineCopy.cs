using Microsoft.JSInterop;

namespace Shaftwright.Pages.Outbox;

/// <summary>How far the pages themselves are kept on this device, so that they open without the laptop.</summary>
public enum OfflineState
{
    /// <summary>Not looked yet.</summary>
    Unknown,

    /// <summary>The browser keeps nothing from an address like this one.</summary>
    Unable,

    /// <summary>Being fetched, or a part is missing.</summary>
    Keeping,

    /// <summary>All of it is here.</summary>
    Kept,

    /// <summary>It could not be fetched whole.</summary>
    Failed,
}

/// <summary>The copy of the pages on this device, through <c>offline.js</c> and the service worker.</summary>
/// <remarks>The worker serves one build whole, or none. A newer one is fetched beside it and taken when the pages are opened
/// anew, or when a person asks for it.</remarks>
public sealed class OfflineCopy(IJSRuntime js) : IDisposable
{
    private IJSObjectReference? _module;
    private DotNetObjectReference<OfflineCopy>? _self;

    /// <summary>How far it is.</summary>
    public OfflineState State { get; private set; }

    /// <summary>Files that are here.</summary>
    public int Kept { get; private set; }

    /// <summary>Files there are; 0 when not known yet.</summary>
    public int Of { get; private set; }

    /// <summary>True when a newer build is here and waits to be opened.</summary>
    public bool Newer { get; private set; }

    /// <summary>True when the browser has promised not to clear what is kept when it is short of room.</summary>
    public bool Promised { get; private set; }

    /// <summary>Raised when any of this changed.</summary>
    public event Action? Changed;

    /// <summary>Has the pages kept, beside what the page does.</summary>
    public async Task Start()
    {
        try
        {
            _module = await js.InvokeAsync<IJSObjectReference>("import", "./offline.js");
            _self = DotNetObjectReference.Create(this);
            Promised = await _module.InvokeAsync<bool>("persisted");
            await _module.InvokeVoidAsync("watch", _self);
        }
        catch (JSException)
        {
            // Whatever a browser has against it, the pages themselves work.
            Say("failed", 0, 0, false);
        }
    }

    /// <summary>Opens the newer build; the page loads anew.</summary>
    public ValueTask TakeOver() => _module?.InvokeVoidAsync("takeOver") ?? ValueTask.CompletedTask;

    /// <summary>Told by the browser.</summary>
    [JSInvokable]
    public void Say(string state, int kept, int of, bool newer)
    {
        State = state switch
        {
            "unable" => OfflineState.Unable,
            "kept" => OfflineState.Kept,
            "failed" => OfflineState.Failed,
            _ => OfflineState.Keeping,
        };
        (Kept, Of, Newer) = (kept, of, newer);
        Changed?.Invoke();
    }

    /// <inheritdoc/>
    public void Dispose() => _self?.Dispose();
}
