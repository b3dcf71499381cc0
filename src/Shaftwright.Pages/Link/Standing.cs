using Shaftwright.JobFile.Exchange;

namespace Shaftwright.Pages.Link;

/// <summary>How this device stands with the laptop, as the laptop said when the pages were opened.</summary>
/// <param name="link">Asks it.</param>
public sealed class Standing(LinkClient link)
{
    /// <summary>What it said; null before it answered.</summary>
    public HereReply? Here { get; private set; }

    /// <summary>Raised when it has answered.</summary>
    public event Action? Changed;

    /// <summary>Asks. The laptop renews the pairing's cookie with its answer: browsers keep none for ever.</summary>
    public async Task Ask()
    {
        Here = (await link.Here()).Reply;
        Changed?.Invoke();
    }
}
