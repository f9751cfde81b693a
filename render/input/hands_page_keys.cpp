#include <cstring>

#include "render/input/hands_page_parts.hpp"
#include "render/ui/theme.hpp"

namespace stallwright::input {
namespace {

/// A key of an action as a button; its name in the registry is "key 1 of record", since many show the same text.
void draw_key(PageFrame& page, Action action, std::size_t place) {
  const std::string shown = key_name(page.settings.keys.of(action)[place]);
  const std::string name = "key " + std::to_string(place + 1) + " of " + action_name(action);
  if (named_button(page, shown.c_str(), name, -1.0f)) page.state.waiting = WaitingKey{action, place};
}

/// Takes the key or button that was pressed, if one was.
void take_key(PageFrame& page) {
  const auto waiting = page.state.waiting;
  if (!waiting) return;
  if (page.view.button) {
    bind_button(page.settings, (*page.view.devices)[page.view.button->device], page.view.button->button,
                waiting->action);
    page.changed = true;
    page.state.waiting.reset();
  }
  if (!page.view.key) return;
  page.state.waiting.reset();
  const SDL_Keycode key = page.view.key->key;
  if (key == SDLK_ESCAPE && waiting->action != Action::leave) return;
  bind(page.settings.keys, waiting->action, waiting->place, key == SDLK_DELETE ? KeyChord{} : *page.view.key);
  page.changed = true;
}

/// Over everything and without a control of its own, so that arrows and Enter reach nothing but the waiting.
void draw_waiting(const PageFrame& page) {
  constexpr const char* kName = "Press a key";
  const bool waits = page.state.waiting.has_value();
  if (waits && !ImGui::IsPopupOpen(kName)) ImGui::OpenPopup(kName);
  const ImVec2 middle = ImGui::GetMainViewport()->GetCenter();
  ImGui::SetNextWindowPos(middle, ImGuiCond_Always, {0.5f, 0.5f});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, page.px(2.0f));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {page.px(20.0f), page.px(16.0f)});
  ImGui::PushStyleColor(ImGuiCol_Border, ui::kTheme.ivory);
  const bool open =
      ImGui::BeginPopupModal(kName, nullptr, ImGuiWindowFlags_AlwaysAutoResize | ImGuiWindowFlags_NoTitleBar);
  ImGui::PopStyleColor();
  ImGui::PopStyleVar(2);
  if (!open) return;
  if (waits) {
    ImGui::Text("Press the key for: %s", action_name(page.state.waiting->action).c_str());
    ImGui::TextUnformatted("or press a button of a stick or pad.");
    ImGui::TextUnformatted("Delete: no key.   Escape: leave it as it is.");
  } else {
    ImGui::CloseCurrentPopup();
  }
  ImGui::EndPopup();
}

void draw_row(PageFrame& page, Action action) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(action_name(action).c_str());
  for (std::size_t place = 0; place < kKeysEach; ++place) {
    ImGui::TableNextColumn();
    draw_key(page, action, place);
  }
  ImGui::TableNextColumn();
  ImGui::TextUnformatted(buttons_text(page.settings, *page.view.devices, action).c_str());
}

}  // namespace

void draw_keys(PageFrame& page) {
  take_key(page);
  const char* group = "";
  if (ImGui::BeginTable("keys", 4, ImGuiTableFlags_SizingStretchProp)) {
    ImGui::TableSetupColumn("action", 0, 2.3f);
    ImGui::TableSetupColumn("key", 0, 1.3f);
    ImGui::TableSetupColumn("another key", 0, 1.5f);
    ImGui::TableSetupColumn("button", 0, 1.2f);
    for (const Action action : all_actions()) {
      if (std::strcmp(group, action_group(action)) != 0) {
        group = action_group(action);
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        const ui::UseFont bold(page.fonts.bold);
        ImGui::TextUnformatted(group);
      }
      draw_row(page, action);
    }
    ImGui::EndTable();
  }
  draw_waiting(page);
}

}  // namespace stallwright::input
